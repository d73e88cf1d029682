import type { FastifyBaseLogger } from 'fastify'
import { eventKinds, FieldEvent, type Outcome } from '@glandkeeper/contract/events'
import { faultsOf } from '@glandkeeper/contract/problem'
import type { SignedIn } from '../../platform/auth.ts'
import { Refusal, refusalFor } from '../../platform/problem.ts'
import type { Platform } from '../../platform/route.ts'
import { appendEvents, refused } from './append.ts'

const NEWEST_VERSION = 1
/** A clock may be wrong by a day and its entry still be placed; past that nobody knows what the date means. */
const FARTHEST_AHEAD_MILLISECONDS = 24 * 3_600_000
/** Before this no record of packing is believed. */
const EARLIEST = Date.UTC(1950, 0, 1)

/** Judges one entry alone, in a transaction of its own: a fault here leaves its neighbours as they are. */
export async function acceptEvent(
  { store, clock }: Platform,
  me: SignedIn,
  raw: unknown,
  log: FastifyBaseLogger,
): Promise<Outcome> {
  const id = idOf(raw)
  try {
    const now = clock()
    const event = understand(raw, now)
    const [outcome] = await store.write((write) => appendEvents(write, me, [event], now, { keepsForecasts: true }))
    return outcome ?? refused(id, new Refusal('server/fault'))
  } catch (error) {
    const refusal = refusalFor(error)
    if (!refusal) log.error(error)
    return refused(id, refusal ?? new Refusal('server/fault'))
  }
}

/** An entry in the terms of the contract, or the refusal that says what cannot be understood in it. */
export function understand(raw: unknown, now: Date): FieldEvent {
  const kind = (raw as { kind?: unknown } | null)?.kind
  if (typeof kind === 'string' && !(eventKinds as readonly string[]).includes(kind)) throw new Refusal('event/unknown-kind', kind)
  const version = (raw as { version?: unknown } | null)?.version
  // A phone may be newer than its server: its entry waits until that is brought up to date.
  if (Number.isInteger(version) && Number(version) > NEWEST_VERSION)
    throw new Refusal('event/unknown-kind', `${String(kind)}, version ${Number(version)}`)
  const parsed = FieldEvent.safeParse(raw)
  if (!parsed.success) {
    const faults = faultsOf(parsed.error)
    throw new Refusal('event/invalid', faults[0]?.detail, faults)
  }
  const event = parsed.data
  refuseEmptyReading(event, '#')
  const replaced = event.kind === 'fact.corrected' ? event.replacement : null
  refuseStrangeTime(event.takenAt, '#/takenAt', now)
  if (replaced) {
    refuseStrangeTime(replaced.takenAt, '#/replacement/takenAt', now)
    refuseEmptyReading(replaced, '#/replacement')
  }
  return event
}

function refuseEmptyReading(entry: { readonly kind: string }, root: string): void {
  if (entry.kind !== 'reading.taken') return
  if (['gapLeft', 'gapRight', 'threadRemaining'].some((field) => field in entry)) return
  throw new Refusal('event/invalid', 'a reading has at least one figure', [
    { pointer: `${root}/gapLeft`, detail: 'read at least one side' },
  ])
}

function refuseStrangeTime(takenAt: string, pointer: string, now: Date): void {
  const moment = Date.parse(takenAt)
  if (moment > now.getTime() + FARTHEST_AHEAD_MILLISECONDS)
    throw new Refusal('event/in-the-future', takenAt, [{ pointer, detail: `${takenAt} has not come yet` }])
  if (moment < EARLIEST) throw new Refusal('event/invalid', takenAt, [{ pointer, detail: `${takenAt} is before 1950` }])
}

function idOf(raw: unknown): string {
  const id = (raw as { id?: unknown } | null)?.id
  return typeof id === 'string' ? id : ''
}
