import type { ComparedPacking } from '@glandkeeper/contract/packing-lives'
import { Link } from 'react-router'
import { counted, formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import css from './lives.module.css'
import { lawMissing, letterOf, limitedInWords, medianInWords, shapeInWords } from './lives-words.ts'

const counts = [
  ['Lives', 'lives'],
  ['Worn out', 'wornOut'],
  ['Renewed early', 'renewedEarly'],
  ['Still in', 'stillIn'],
] as const

/** The figures behind the stairs, in the same order. */
export function LivesTable({ packings }: { packings: readonly ComparedPacking[] }) {
  return (
    <table className={`${page.table} ${css.table}`}>
      <thead>
        <tr>
          <th scope="col">Packing</th>
          {counts.map(([heading]) => (
            <th key={heading} scope="col" className={css.right}>
              {heading}
            </th>
          ))}
          <th scope="col">Half worn out by</th>
          <th scope="col">Weibull scale, months</th>
          <th scope="col">Shape, and what it says</th>
          <th scope="col">Valves</th>
        </tr>
      </thead>
      <tbody>
        {packings.map((packing, index) => (
          <Row key={packing.family} packing={packing} letter={letterOf(index)} />
        ))}
      </tbody>
    </table>
  )
}

function Row({ packing, letter }: { packing: ComparedPacking; letter: string }) {
  const { family, weibull, valves, isTooFew } = packing
  return (
    <tr>
      <th scope="row">
        <span className={css.letter}>{letter}</span>
        {family === 'not known' ? family : <Link to={`/packings/${encodeURIComponent(family)}`}>{family}</Link>}
      </th>
      {counts.map(([heading, field]) => (
        <td key={heading} data-name={heading} className={page.figure}>
          {formatCount(packing[field])}
        </td>
      ))}
      <td data-name="Half worn out by" className={isTooFew ? 'soft' : undefined}>
        {medianInWords(packing)}
      </td>
      {weibull === null || isTooFew ? (
        <td colSpan={2} data-name="Weibull" className="soft">
          {lawMissing(packing)}
        </td>
      ) : (
        <>
          <td data-name="Weibull scale, months" className={css.figure}>
            {limitedInWords(weibull.scale)}
          </td>
          <td data-name="Shape">
            <span className={css.figure}>{limitedInWords(weibull.shape)}</span> {shapeInWords(weibull.shape)}
          </td>
        </>
      )}
      <td className={css.valves}>{valves.length > 0 && <Valves tags={valves} />}</td>
    </tr>
  )
}

/** The server names no more: those where it wore out soonest. */
const MOST_LISTED = 50

function Valves({ tags }: { tags: readonly string[] }) {
  return (
    <details>
      <summary>{tags.length < MOST_LISTED ? counted(tags.length, 'valve') : `the first ${MOST_LISTED} valves`}</summary>
      <ul className={css.tags}>
        {tags.map((tag) => (
          <li key={tag}>
            <Link to={`/valves/${encodeURIComponent(tag)}`}>{tag}</Link>
          </li>
        ))}
      </ul>
    </details>
  )
}
