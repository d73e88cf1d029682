import type { RegulatedLeak } from '@glandkeeper/contract/leak-rules'
import { Link } from 'react-router'
import { formatDay } from '../../platform/site-time.ts'
import { counted, formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { clockBar, clockFrame } from './clock-geometry.ts'
import { ClockAxis, ClockDrawing } from './clock-drawing.tsx'
import { ClockMark } from './clock-mark.tsx'
import { attemptClock, repairClock, standingInWords, standingLeaks } from './clock-words.ts'
import css from './leak-rules.module.css'

interface ClocksProps {
  leaks: readonly RegulatedLeak[]
  /** Of the site. */
  today: string
}

/** Leaks that nobody has seen gone, what is due first on top. */
export function Clocks({ leaks, today }: ClocksProps) {
  const standing = standingLeaks(leaks)
  const frame = clockFrame(standing, today)
  return (
    <section className={css.part} aria-labelledby="clocks">
      <h2 id="clocks">Clocks</h2>
      <p>{standingInWords(leaks, today)}</p>
      {standing.length > 0 && (
        <table className={`${page.table} ${css.rows}`}>
          <caption>
            Bars: solid the days that ran, dashed those that are left, thick those over · short upright: first attempt by · long
            upright: repair by, dashed where put off · ring: first attempt
          </caption>
          <thead>
            <tr>
              <th scope="col">Leak</th>
              <th scope="col">Seen on</th>
              <th scope="col">First attempt</th>
              <th scope="col">Repair</th>
              <th scope="col">Put off</th>
              <th scope="col">
                <span className={css.heard}>Days</span>
                <ClockAxis frame={frame} />
              </th>
            </tr>
          </thead>
          <tbody>
            {standing.map((leak) => (
              <tr key={leak.leakId}>
                <LeakCells leak={leak} today={today} />
                <td data-name="put off" className={leak.deferral === null ? css.none : undefined}>
                  {putOffInWords(leak)}
                </td>
                <td className={css.drawn}>
                  <ClockDrawing bar={clockBar(leak, frame, today)} frame={frame} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  )
}

/** Seen gone in the last year: how long it took is evidence too. */
export function SeenGone({ leaks, today }: ClocksProps) {
  const gone = leaks.filter(({ repairedOn }) => repairedOn !== null)
  if (gone.length === 0) return null
  const late = gone.filter(({ attempt, repair }) => attempt === 'made late' || repair === 'verified late').length
  return (
    <section className={css.part} aria-labelledby="gone">
      <h2 id="gone">Seen gone in the last year</h2>
      <details>
        <summary>
          {counted(gone.length, 'leak')}, {late === 0 ? 'all in time' : `${formatCount(late)} with a clock that was late`}
        </summary>
        <table className={`${page.table} ${css.rows}`}>
          <thead>
            <tr>
              <th scope="col">Leak</th>
              <th scope="col">Seen on</th>
              <th scope="col">First attempt</th>
              <th scope="col">Repair</th>
            </tr>
          </thead>
          <tbody>
            {gone.map((leak) => (
              <tr key={leak.leakId}>
                <LeakCells leak={leak} today={today} />
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  )
}

function LeakCells({ leak, today }: { leak: RegulatedLeak; today: string }) {
  const { tag, leakId, description, areaCode, detectedOn } = leak
  const [attempt, repair] = [attemptClock(leak, today), repairClock(leak, today)]
  return (
    <>
      <th scope="row">
        <Link to={`/valves/${encodeURIComponent(tag)}/leaks#${leakId}`} className={css.tag}>
          {tag}
        </Link>{' '}
        <span className="soft">{[description, areaCode].filter(Boolean).join(', ')}</span>
      </th>
      <td data-name="seen on">
        <time dateTime={detectedOn}>{formatDay(detectedOn)}</time> <span className="soft">{worstInWords(leak)}</span>
      </td>
      <td data-name="first attempt">
        <ClockMark shape={attempt.shape} word={attempt.word} /> <span className={css.line}>{attempt.says}</span>
      </td>
      <td data-name="repair">
        <ClockMark shape={repair.shape} word={repair.word} /> <span className={css.line}>{repair.says}</span>
      </td>
    </>
  )
}

function worstInWords({ worst, worstScreening }: RegulatedLeak): string {
  const measured = worstScreening === null ? null : `${formatCount(Math.round(worstScreening))}\u00a0ppmv`
  return [worst, measured].filter((part) => part !== null).join(', ')
}

function putOffInWords({ deferral }: RegulatedLeak): string {
  if (deferral === null) return 'no'
  const until = deferral.until === null ? 'no day set' : `until ${formatDay(deferral.until)}`
  return `${deferral.reason}; allowed by ${deferral.approvedBy}, ${until}`
}
