import type { ValveHistory } from '@glandkeeper/contract/valves'
import { format } from 'date-fns'
import { Link } from 'react-router'
import { atSite } from '../../platform/site-time.ts'
import { StandingMark } from '../../ui/standing.tsx'
import { timelineRows } from '../valves/standing-facts.ts'
import { BigGauge } from './big-gauge.tsx'
import { cautionFor, HOW_TO_TURN } from './caution.ts'
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
      <p className={look.caution}>
        {cautionFor(valve)} <span className="soft">{HOW_TO_TURN}</span>
      </p>
    </>
  )
}

function LastEntries({ history, timeZone }: { history: ValveHistory; timeZone: string }) {
  const rows = timelineRows(history.timeline).filter(({ entry }) => entry.standsAs !== 'taken back')
  if (rows.length === 0) return <p className="soft">Nobody has logged anything here yet.</p>
  return (
    <ul className={look.last} aria-label="Last entries">
      {rows.slice(0, SHOWN).map(({ entry, corrections }) => (
        <li key={entry.event.id}>
          <time dateTime={entry.event.takenAt}>{format(atSite(new Date(entry.event.takenAt), timeZone), 'd MMM')}</time>
          <span>{(corrections.at(-1) ?? entry).says}</span>
        </li>
      ))}
    </ul>
  )
}
