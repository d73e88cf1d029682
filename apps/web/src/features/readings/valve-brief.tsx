import type { TimelineEntry } from '@glandkeeper/contract/events'
import type { ValveHistory } from '@glandkeeper/contract/valves'
import { format } from 'date-fns'
import { Link } from 'react-router'
import { atSite } from '../../platform/site-time.ts'
import { StandingMark } from '../../ui/standing.tsx'
import { BigGauge } from './big-gauge.tsx'
import { cautionFor } from './caution.ts'
import look from './log-page.module.css'

const NO_BREAK_SPACE = '\u00a0'
const SHOWN = 3

/** What this gland is and where it stands, for somebody who is in front of it. */
export function ValveBrief({ history, timeZone }: { history: ValveHistory; timeZone: string }) {
  const { valve, state } = history
  return (
    <>
      <header className={look.head}>
        <h1>{valve.tag}</h1>
        <StandingMark standing={state.standing} />
        <p>
          <Link to={`/valves/${encodeURIComponent(valve.tag)}`}>{valve.description || 'This valve'}</Link>
          {valve.temperature !== null && (
            <>
              {' · '}
              <b>
                {valve.temperature}
                {NO_BREAK_SPACE}°C
              </b>
            </>
          )}
        </p>
      </header>
      <BigGauge history={history} />
      <LastEntries history={history} timeZone={timeZone} />
      <p className={look.caution}>{cautionFor(valve)}</p>
    </>
  )
}

function LastEntries({ history, timeZone }: { history: ValveHistory; timeZone: string }) {
  const entries = history.timeline.filter(holds).slice(0, SHOWN)
  if (entries.length === 0) return <p className="soft">Nobody has logged anything here yet.</p>
  return (
    <ul className={look.last} aria-label="Last entries">
      {entries.map(({ event, says }) => (
        <li key={event.id}>
          <time dateTime={event.takenAt}>{format(atSite(new Date(event.takenAt), timeZone), 'd MMM')}</time>
          <span>{says}</span>
        </li>
      ))}
    </ul>
  )
}

/** What was taken back or put right later is no news at the valve; what it was put right to is. */
function holds({ event, standsAs }: TimelineEntry): boolean {
  return standsAs === 'as entered' || (standsAs === 'correction' && event['replacement'] !== null)
}
