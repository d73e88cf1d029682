import type { LeakStudy } from '@glandkeeper/contract/leak-study'
import { counted, formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { TaggedValve } from './leak-links.tsx'
import css from './leaks.module.css'
import { RateMark } from './rate-mark.tsx'
import { topOfRates } from './rate-scale.ts'
import { changeInWords, rateWithLimits } from './study-words.ts'

type Change = LeakStudy['packingChanges'][number]

/** The same valves with one packing and then another. */
export function PackingChanges({ changes }: { changes: readonly Change[] }) {
  const top = topOfRates(changes.flatMap(({ before, after }) => [before, after]))
  return (
    <section className={css.part} aria-labelledby="changes">
      <h2 id="changes">Before and after a change of packing</h2>
      {changes.length === 0 ? (
        <p>No valve is known to have had one packing and then another.</p>
      ) : (
        <>
          <p>
            The same valves before and after, so that a hard service does not count against a packing. Valves are changed when
            they leak, so some improve by chance alone.
          </p>
          <table className={`${page.table} ${css.table} ${css.stacked} ${css.rates}`}>
            <thead>
              <tr>
                <th scope="col">Change</th>
                <th scope="col">Leaks in 1,000 valve-months, before and after</th>
                <th scope="col">What that says</th>
                <th scope="col">Valves</th>
              </tr>
            </thead>
            <tbody>
              {changes.map((change) => (
                <Row key={`${change.from} ${change.to}`} change={change} top={top} />
              ))}
            </tbody>
          </table>
        </>
      )}
    </section>
  )
}

const FEW = 3

function Row({ change: { from, to, valves, before, after }, top }: { change: Change; top: number }) {
  return (
    <tr>
      <th scope="row">
        {from} to {to}
      </th>
      <td>
        {[before, after].map((rate, index) => (
          // Always two, in this order.
          // oxlint-disable-next-line react/no-array-index-key -- see above
          <div key={index} className={css.rate}>
            <RateMark rate={rate} top={top} />
            <span>
              {index === 0 ? 'before' : 'after'} {rateWithLimits(rate)}, {counted(rate.leaks, 'leak')} in{' '}
              {formatCount(Math.round(rate.months))} months
            </span>
          </div>
        ))}
      </td>
      <td>{changeInWords(before, after)}</td>
      <td>
        {valves.length <= FEW ? (
          <Tags valves={valves} />
        ) : (
          <details className={css.folded}>
            <summary>{counted(valves.length, 'valve')}</summary>
            <Tags valves={valves} />
          </details>
        )}
      </td>
    </tr>
  )
}

function Tags({ valves }: { valves: readonly string[] }) {
  return (
    <ul className={css.tags}>
      {valves.map((tag) => (
        <li key={tag}>
          <TaggedValve tag={tag} />
        </li>
      ))}
    </ul>
  )
}
