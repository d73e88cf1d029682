import type { MonitoringLook } from '@glandkeeper/contract/leak-rules'
import { useQuery } from '@tanstack/react-query'
import { Link } from 'react-router'
import { formatDay } from '../../platform/site-time.ts'
import { counted, formatCount } from '../../ui/count.ts'
import { ChoiceInput } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { siteAreas } from '../register/queries.ts'
import { byArea } from './by-area.ts'
import { fromToday } from './clock-words.ts'
import css from './leak-rules.module.css'
import { everyInWords } from './rule-words.ts'

interface LooksRouteProps {
  looks: readonly MonitoringLook[]
  today: string
  /** Days. */
  lookAhead: number
  /** Still that of another number of days. */
  isOld: boolean
  onChange: (lookAhead: number) => void
}

const spans = [
  { value: '7', words: 'a week' },
  { value: '31', words: 'a month' },
  { value: '92', words: 'three months' },
  { value: '365', words: 'a year' },
]

/** Whom to hold the meter to, in walking order. */
export function LooksRoute({ looks, today, lookAhead, isOld, onChange }: LooksRouteProps) {
  const overdue = looks.filter(({ isOverdue }) => isOverdue).length
  return (
    <section className={css.part} aria-labelledby="route">
      <h2 id="route">Looks that are due</h2>
      <div className={css.hands}>
        <ChoiceInput label="Due within" value={String(lookAhead)} choices={spans} onChange={(days) => onChange(Number(days))} />
      </div>
      <p>
        {looks.length === 0
          ? `Nothing to look at within ${counted(lookAhead, 'day')}.`
          : `${counted(looks.length, 'valve')} within ${counted(lookAhead, 'day')}, in walking order${overdue > 0 ? `; ${formatCount(overdue)} overdue` : ''}.`}
      </p>
      {looks.length > 0 && <Route looks={looks} today={today} isOld={isOld} />}
    </section>
  )
}

function Route({ looks, today, isOld }: Pick<LooksRouteProps, 'looks' | 'today' | 'isOld'>) {
  const areas = useQuery(siteAreas).data?.areas ?? []
  return (
    <table className={`${page.table} ${css.rows}`} aria-busy={isOld}>
      <thead>
        <tr>
          <th scope="col">Valve</th>
          <th scope="col">Level</th>
          <th scope="col">Due</th>
          <th scope="col">How often, and why</th>
          <th scope="col">Last reading, net</th>
        </tr>
      </thead>
      {byArea(looks).map(({ areaCode, looks: own }) => (
        <tbody key={areaCode}>
          <tr className={css.area}>
            <th scope="rowgroup" colSpan={5}>
              {areas.find(({ code }) => code === areaCode)?.name ?? areaCode}{' '}
              <span className="soft">{counted(own.length, 'valve')}</span>
            </th>
          </tr>
          {own.map((look) => (
            <Row key={look.tag} look={look} today={today} />
          ))}
        </tbody>
      ))}
    </table>
  )
}

function Row({ look, today }: { look: MonitoringLook; today: string }) {
  const { tag, description, level, dueOn, isOverdue, everyDays, reason, kind, note } = look
  return (
    <tr>
      <th scope="row">
        <Link to={`/valves/${encodeURIComponent(tag)}`} className={css.tag}>
          {tag}
        </Link>{' '}
        <span className="soft">{description}</span>
      </th>
      <td data-name="level" className={page.figure}>
        {level}
      </td>
      <td data-name="due" className={isOverdue ? 'hot' : undefined}>
        {dueOn !== null && `${formatDay(dueOn)}, ${fromToday(dueOn, today)}`}
      </td>
      <td data-name="how often">
        {everyInWords(everyDays)}: {reason}
        {kind !== 'ordinary' && note !== '' && <span className={`soft ${css.line}`}>{note}</span>}
      </td>
      <td data-name="last reading">{lastInWords(look)}</td>
    </tr>
  )
}

function lastInWords({ lastOn, lastNet }: MonitoringLook): string {
  if (lastOn === null || lastNet === null) return 'none yet'
  return `${formatCount(Math.round(lastNet))}\u00a0ppmv, ${formatDay(lastOn)}`
}
