import type { ValveCard } from '@glandkeeper/contract/pocket'
import { formatMillimetres } from '@glandkeeper/units/format'
import { format } from 'date-fns'
import { Link } from 'react-router'
import type { OutboxEntry } from '../../platform/outbox/entries.ts'
import { atSite, formatDay } from '../../platform/site-time.ts'
import { StandingMark } from '../../ui/standing.tsx'
import { PhotoStrip } from '../photos/index.tsx'
import { BigGauge } from './big-gauge.tsx'
import { cautionFor } from './caution.ts'
import look from './log-page.module.css'

const NO_BREAK_SPACE = '\u00a0'
const SHOWN = 3

/** What this gland is and where it stands, for somebody who is in front of it. */
interface ValveBriefProps {
  card: ValveCard
  /** Entries of this valve that are still on the device. */
  waiting: readonly OutboxEntry[]
  timeZone: string
}

export function ValveBrief({ card, waiting, timeZone }: ValveBriefProps) {
  const { valve, state } = card
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
      <BigGauge history={card} />
      <ExpectedToday card={card} />
      <LastEntries card={card} waiting={waiting} timeZone={timeZone} />
      <p className={look.caution}>{cautionFor(valve)}</p>
    </>
  )
}

/** What the gap is likely to show, where somebody was sent; and why and when it is to be looked at. */
function ExpectedToday({ card: { state, expects } }: Pick<ValveBriefProps, 'card'>) {
  const reading = expects && `Expected today: a gap that leaves about ${formatMillimetres(expects.reserve)}.`
  const why = state.nextLook && `Look due ${formatDay(state.nextLook.on)}: ${state.nextLook.because}.`
  if (reading === null && why === null) return null
  return <p>{[reading, why].filter((part) => part !== null).join(' ')}</p>
}

function LastEntries({ card, waiting, timeZone }: ValveBriefProps) {
  const own = waiting.toReversed().map(({ event, says, state }) => ({
    id: event.id,
    takenAt: event.takenAt,
    says: `${says} (${state === 'refused' ? 'on this device, refused' : 'on this device'})`,
    photos: [],
  }))
  const known = card.timeline
    .filter(holds)
    .map(({ event, says }) => ({ id: event.id, takenAt: event.takenAt, says, photos: event.photos ?? [] }))
  const entries = [...own, ...known].slice(0, SHOWN)
  if (entries.length === 0) return <p className="soft">Nobody has logged anything here yet.</p>
  return (
    <ul className={look.last} aria-label="Last entries">
      {entries.map(({ id, takenAt, says, photos }) => (
        <li key={id}>
          <time dateTime={takenAt}>{format(atSite(new Date(takenAt), timeZone), 'd MMM')}</time>
          <div>
            {says}
            {photos.length > 0 && <PhotoStrip digests={photos} alt="Photo with this entry" />}
          </div>
        </li>
      ))}
    </ul>
  )
}

/** What was taken back or put right later is no news at the valve; what it was put right to is. */
function holds({ event, standsAs }: ValveCard['timeline'][number]): boolean {
  return standsAs === 'as entered' || (standsAs === 'correction' && event['replacement'] !== null)
}
