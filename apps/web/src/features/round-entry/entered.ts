import type { ValveCard } from '@glandkeeper/contract/pocket'
import type { RoundStop } from '@glandkeeper/contract/rounds'
import type { OutboxEntry } from '../../platform/outbox/entries.ts'
import { stillHolding } from '../../platform/outbox/still-holding.ts'
import { formatMoment } from '../../platform/site-time.ts'

interface Known {
  readonly waiting: readonly OutboxEntry[]
  /** Null where this device does not carry the valve. */
  readonly card: ValveCard | null
  readonly timeZone: string
}

/** What was entered at a stop since the round was made, so that nobody types it again; null where nothing was. */
export function enteredAt(
  { valveId, visit }: Pick<RoundStop, 'valveId' | 'visit'>,
  { waiting, card, timeZone }: Known,
): string | null {
  const own = waiting.filter(({ event }) => event.valveId === valveId)
  const holding = new Set(stillHolding(own.map(({ event }) => event)).map(({ id }) => id))
  const here = own.findLast(({ event }) => holding.has(event.id))
  if (here) return `${formatMoment(here.event.takenAt, timeZone)}: ${here.says}, on this device`
  if (visit === null) return null
  const entry = card?.timeline.find(({ event }) => Date.parse(event.takenAt) === Date.parse(visit.at))
  return `${formatMoment(visit.at, timeZone)}: ${entry?.says ?? (visit.missed === null ? 'an entry was made' : `not done, ${visit.missed}`)}`
}
