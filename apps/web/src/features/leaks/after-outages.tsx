import type { LeakStudy } from '@glandkeeper/contract/leak-study'
import { formatDay } from '../../platform/site-time.ts'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { LeakCount } from './leak-links.tsx'
import css from './leaks.module.css'
import { afterOutagesInWords, percent } from './study-words.ts'

type After = LeakStudy['afterOutages']

/** Whether leaks crowd in the thirty days after an outage. */
export function AfterOutages({ after }: { after: After }) {
  return (
    <section className={css.part} aria-labelledby="outages">
      <h2 id="outages">After outages</h2>
      <p>{afterOutagesInWords(after)}</p>
      {after.share !== null && after.timeShare !== null && after.timeShare > 0 && (
        <Bars share={after.share} lower={after.lower} upper={after.upper} timeShare={after.timeShare} />
      )}
      {after.outages.length > 0 && (
        <ul className={css.plainList}>
          {after.outages.map(({ outageId, name, endedOn, leaks }) => (
            <li key={outageId}>
              {name}, ended on {formatDay(endedOn)}:{' '}
              <LeakCount leaks={leaks} filters={{ afterOutage: outageId }} of={`within thirty days after ${name}`} />{' '}
              {leaks === 1 ? 'leak' : 'leaks'}
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}

const MOST = 640
const ROW = 46
const BAR = 18

interface Shares {
  share: number
  lower: number | null
  upper: number | null
  timeShare: number
}

function Bars(shares: Shares) {
  const [measure, width] = useMeasuredWidth()
  return (
    <figure ref={measure} className={css.plot}>
      {width !== null && width > 0 && <Drawn {...shares} width={Math.min(width, MOST)} />}
    </figure>
  )
}

function Drawn({ share, lower, upper, timeShare, width }: Shares & { width: number }) {
  const top = Math.max(share, upper ?? 0, timeShare)
  const x = (value: number) => (value / top) * (width - 64)
  const rows = [
    { words: 'of all leaks', value: share, lower, upper },
    { words: 'of the time watched', value: timeShare, lower: null, upper: null },
  ]
  const says = rows.map(({ words, value }) => `${percent(value)} ${words}`).join(', ')
  return (
    <svg width={width} height={rows.length * ROW} viewBox={`0 0 ${width} ${rows.length * ROW}`} role="img" aria-label={says}>
      {rows.map((row, index) => (
        <g key={row.words} transform={`translate(0 ${index * ROW})`}>
          <text x={0} y={14} className="soft">
            {row.words}
          </text>
          <rect x={0.5} y={20} width={Math.max(x(row.value), 1)} height={BAR} className={css.bar} />
          {row.lower !== null && row.upper !== null && (
            <path d={`M${x(row.lower)} 29H${x(row.upper)}M${x(row.lower)} 25v8M${x(row.upper)} 25v8`} className="out" />
          )}
          <text x={x(row.upper ?? row.value) + 8} y={34} className={css.strong}>
            {percent(row.value)}
          </text>
        </g>
      ))}
    </svg>
  )
}
