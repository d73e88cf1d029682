import ical, { escape } from 'ical-generator'
import { momentAt } from '../../platform/local-time.ts'

/** One round as a calendar shows it. */
export interface RoundInFeed {
  readonly id: string
  readonly name: string
  readonly walkOn: string
  readonly stopCount: number
  readonly areaNames: readonly string[]
  readonly fitterName: string | null
  /** Null where nobody has worked out how long it takes. */
  readonly minutes: number | null
  readonly changedAt: Date
}

export interface Feed {
  readonly name: string
  readonly timeZone: string
  /** When people set out on a round, by the clocks of the site: `07:00`. */
  readonly setOutAt: string
  readonly rounds: readonly RoundInFeed[]
}

const MINUTES_UNKNOWN = 60
const MINUTE = 60_000

/** Rounds as a calendar (RFC 5545). Hours are given in UTC, worked out day by day, so that no program needs to know the zone. */
export function calendarOf({ name, timeZone, setOutAt, rounds }: Feed): string {
  const calendar = ical({
    prodId: '//Glandkeeper//Rounds//EN',
    // The library escapes what stands in events, and this not.
    name: escape(name, false),
    ttl: 60 * 60,
  })
  for (const round of rounds) {
    const start = momentAt(round.walkOn, setOutAt, timeZone)
    // RFC 5545, 3.8.2.2: the end is later than the start.
    const minutes = Math.max(1, Math.round(round.minutes ?? MINUTES_UNKNOWN))
    calendar.createEvent({
      id: `${round.id}@glandkeeper`,
      summary: `${round.name}, ${round.stopCount} ${round.stopCount === 1 ? 'stop' : 'stops'}`,
      start,
      end: new Date(start.getTime() + minutes * MINUTE),
      description: describe(round),
      stamp: round.changedAt,
      lastModified: round.changedAt,
    })
  }
  // RFC 5545, 3.1: every line ends with a line break; the library leaves out the last.
  return `${calendar.toString()}\r\n`
}

function describe({ areaNames, minutes, fitterName }: RoundInFeed): string {
  return [
    ...(areaNames.length > 0 ? [`${areaNames.length === 1 ? 'Area' : 'Areas'}: ${areaNames.join(', ')}`] : []),
    ...(minutes === null ? [] : [`Expected: ${Math.round(minutes)} min`]),
    `Fitter: ${fitterName ?? 'whoever has time'}`,
  ].join('\n')
}
