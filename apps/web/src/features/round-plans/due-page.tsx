import type { OkOf } from '@glandkeeper/contract/endpoint'
import { type OverdueLook, showDueLooks } from '@glandkeeper/contract/due-looks'
import { queryOptions, useQuery } from '@tanstack/react-query'
import { Link } from 'react-router'
import { call } from '../../platform/client.ts'
import { formatDay } from '../../platform/site-time.ts'
import { Empty } from '../../ui/empty.tsx'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { StandingMark } from '../../ui/standing.tsx'
import { causeInWords } from './reason-words.ts'
import { counted } from '../../ui/count.ts'
import { weekInWords, weekNumber } from './week-words.ts'
import css from './round-plans.module.css'

type DueLooks = OkOf<typeof showDueLooks>

const dueQuery = queryOptions({ queryKey: ['due looks'], queryFn: ({ signal }) => call(showDueLooks, { signal }) })

/** What is due and not done, by area and risk; how rounds were walked; and what looks found. */
export function DuePage() {
  const due = useQuery(dueQuery)
  return (
    <main className={page.page}>
      <title>Due and not done · Glandkeeper</title>
      <div className={page.title}>
        <h1>Due and not done</h1>
        <Link to="/rounds/plan">Plan of rounds</Link>
      </div>
      {due.error && <ProblemNote error={due.error} again={{ words: 'Read it again', onPress: () => void due.refetch() }} />}
      {due.isPending && <p role="status">Reading what is due</p>}
      {due.data && (
        <>
          <ByArea areas={due.data.areas} overdueCount={due.data.overdueCount} />
          <ByWeek weeks={due.data.weeks} />
          <Overdue looks={due.data.overdue} count={due.data.overdueCount} />
        </>
      )}
    </main>
  )
}

function ByArea({ areas, overdueCount }: { areas: DueLooks['areas']; overdueCount: number }) {
  return (
    <section className={css.week} aria-labelledby="areas">
      <h2 id="areas">{overdueCount === 0 ? 'No look is overdue' : `${counted(overdueCount, 'look is', 'looks are')} overdue`}</h2>
      <div className={page.wide}>
        <table className={page.table}>
          <caption className="soft">By area and standing, and what the looks of the last half year found</caption>
          <thead>
            <tr>
              <th scope="col">Area</th>
              <th scope="col">Valves</th>
              {(['spent', 'book', 'watch', 'ample'] as const).map((standing) => (
                <th key={standing} scope="col">
                  Overdue, <StandingMark standing={standing} />
                </th>
              ))}
              <th scope="col">Looks</th>
              <th scope="col">Found a leak or a stiff stem</th>
              <th scope="col">Looks for one finding</th>
            </tr>
          </thead>
          <tbody>
            {areas.map(({ areaCode, areaName, valves, overdue, looks, found }) => (
              <tr key={areaCode}>
                <td>
                  <Link to={`/?area=${encodeURIComponent(areaCode)}`}>{areaName}</Link>
                </td>
                <td className={page.figure}>{valves}</td>
                {(['spent', 'book', 'watch', 'ample'] as const).map((standing) => (
                  <td key={standing} className={page.figure}>
                    {overdue[standing] || '–'}
                  </td>
                ))}
                <td className={page.figure}>{looks}</td>
                <td className={page.figure}>{found}</td>
                <td className={page.figure}>{found === 0 ? '–' : (looks / found).toFixed(1)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  )
}

const WIDEST_WEEK = 30
const HEIGHT = 120

/** One upright for each week: visited in their week solid, later hatched by an outline, the rest empty. */
function ByWeek({ weeks }: { weeks: DueLooks['weeks'] }) {
  const [measure, width] = useMeasuredWidth()
  const step = Math.max(0, Math.min(WIDEST_WEEK, ((width ?? 0) - 20) / Math.max(1, weeks.length)))
  const most = Math.max(1, ...weeks.map(({ stops }) => stops))
  const height = (count: number) => (count / most) * HEIGHT
  const [all, inTime] = [sum(weeks.map(({ stops }) => stops)), sum(weeks.map((week) => week.inTime))]
  return (
    <section className={css.week} aria-labelledby="weeks">
      <h2 id="weeks">Rounds as they were walked</h2>
      {weeks.length === 0 ? (
        <Empty title="No rounds yet">Once rounds are made, this shows how many of their stops were visited in their week.</Empty>
      ) : (
        <>
          <p>
            {Math.round((inTime / Math.max(1, all)) * 100)}&nbsp;% of {counted(all, 'stop')} were visited in the week they were
            meant for.
          </p>
          <div ref={measure}>
            <svg
              width={Math.max(0, weeks.length * step + 20)}
              height={HEIGHT + 44}
              role="img"
              aria-label={weeks
                .map(
                  (week) =>
                    `${weekInWords(week.weekOf)}: ${week.inTime} of ${week.stops} in time, ${week.later} later, ${week.missed} not done`,
                )
                .join('; ')}
            >
              {weeks.map((week, index) => {
                const x = 10 + index * step
                return (
                  <g key={week.weekOf}>
                    <rect
                      x={x}
                      y={HEIGHT - height(week.stops)}
                      width={step * 0.66}
                      height={height(week.stops)}
                      className={css.stops}
                    />
                    <rect
                      x={x}
                      y={HEIGHT - height(week.inTime)}
                      width={step * 0.66}
                      height={height(week.inTime)}
                      className={css.inTime}
                    />
                    <rect
                      x={x}
                      y={HEIGHT - height(week.inTime + week.later)}
                      width={step * 0.66}
                      height={height(week.later)}
                      className={css.later}
                    />
                    <text x={x + step / 3} y={HEIGHT + 16} textAnchor="middle" fontSize={13}>
                      {weekNumber(week.weekOf, 0)}
                    </text>
                    <text x={x + step / 3} y={HEIGHT + 34} textAnchor="middle" fontSize={13} className="soft">
                      {week.stops}
                    </text>
                  </g>
                )
              })}
              <path d={`M4 ${HEIGHT}H${weeks.length * step + 16}`} className="out" />
            </svg>
          </div>
          <p className="soft">
            Solid: visited in their week. Dashed: visited later. Empty: could not be done, or left out. Below: the week, and its
            stops.
          </p>
        </>
      )}
    </section>
  )
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

function Overdue({ looks, count }: { looks: readonly OverdueLook[]; count: number }) {
  if (count === 0) return null
  return (
    <section className={css.week} aria-labelledby="overdue">
      <h2 id="overdue">Overdue valves, the worst first</h2>
      <div className={page.wide}>
        <table className={page.table}>
          <thead>
            <tr>
              <th scope="col">Valve</th>
              <th scope="col">Standing</th>
              <th scope="col">Was due</th>
              <th scope="col">What for</th>
              <th scope="col">Area</th>
            </tr>
          </thead>
          <tbody>
            {looks.map(({ tag, description, areaCode, standing, dueOn, daysOver, cause }) => (
              <tr key={tag}>
                <td>
                  <Link to={`/valves/${encodeURIComponent(tag)}`}>{tag}</Link> <span className="soft">{description}</span>
                </td>
                <td>
                  <StandingMark standing={standing} />
                </td>
                <td>{dueOn === null ? 'never seen' : `${formatDay(dueOn)}, ${counted(daysOver ?? 0, 'day')} ago`}</td>
                <td>{causeInWords(cause)}</td>
                <td>{areaCode}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {count > looks.length && <p className="soft">And {(count - looks.length).toLocaleString('en-GB')} more.</p>}
    </section>
  )
}
