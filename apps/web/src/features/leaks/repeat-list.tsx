import type { LeakStudy, RepeatLeaker } from '@glandkeeper/contract/leak-study'
import { useState } from 'react'
import { formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { LeakCount, TaggedValve } from './leak-links.tsx'
import css from './leaks.module.css'
import { chanceInWords, luckInWords, meanInWords } from './study-words.ts'

const FIRST_SHOWN = 20

/** Valves above the mean course, the least likely by chance on top. */
export function RepeatList({ study }: { study: LeakStudy }) {
  const [showsAll, setShowsAll] = useState(false)
  const { repeatLeakers, aboveInAll } = study
  if (aboveInAll === 0) return <p>No valve lies above the limit of the mean: none leaks more often than chance allows.</p>
  const shown = showsAll ? repeatLeakers : repeatLeakers.slice(0, FIRST_SHOWN)
  const most = Math.max(1, ...repeatLeakers.map(({ leaks }) => leaks))
  return (
    <>
      <p>{luckInWords(study)}</p>
      <table className={`${page.table} ${css.table} ${css.stacked} ${css.narrow}`}>
        <caption className="soft">drop: its leaks · upright: to be expected of a valve watched as long, with its limit</caption>
        <thead>
          <tr>
            <th scope="col">Valve</th>
            <th scope="col">Chance, were it like the others</th>
            <th scope="col">Leaks against expected</th>
            <th scope="col" className={css.right}>
              Leaks
            </th>
            <th scope="col" className={css.right}>
              Expected
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map((leaker) => (
            <Row key={leaker.tag} leaker={leaker} most={most} />
          ))}
        </tbody>
      </table>
      {shown.length < repeatLeakers.length && (
        <button type="button" onClick={() => setShowsAll(true)}>
          Show all {formatCount(repeatLeakers.length)}
        </button>
      )}
      {showsAll && aboveInAll > repeatLeakers.length && (
        <p className="soft">And {formatCount(aboveInAll - repeatLeakers.length)} more, whose leaks chance explains better.</p>
      )}
    </>
  )
}

const WIDTH = 180
const HEIGHT = 22

function Row({ leaker: { tag, leaks, expected, upper, chance }, most }: { leaker: RepeatLeaker; most: number }) {
  const x = (value: number) => Math.min(4 + (value / most) * (WIDTH - 10), WIDTH - 4)
  const says = `${leaks} leaks, limit of the mean ${meanInWords(upper)}`
  return (
    <tr>
      <th scope="row">
        <TaggedValve tag={tag} />
      </th>
      <td>{chanceInWords(chance)}</td>
      <td>
        <svg width={WIDTH} height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={says}>
          <path d={`M${x(0)} ${HEIGHT - 4}H${x(most)}`} className="hair" />
          <rect x={x(expected)} y={HEIGHT - 13} width={Math.max(x(upper) - x(expected), 1)} height={9} className={css.band} />
          <path d={`M${x(expected)} ${HEIGHT - 16}V${HEIGHT - 4}`} className="out" />
          <path d={`M${x(leaks)} ${HEIGHT - 18}c-6 8 -4 12 0 12s6 -4 0 -12Z`} className="hotfill" />
        </svg>
      </td>
      <td data-name="Leaks" className={page.figure}>
        <LeakCount leaks={leaks} filters={{ tag }} of={tag} />
      </td>
      <td data-name="Expected" className={page.figure}>
        {meanInWords(expected)}
      </td>
    </tr>
  )
}
