import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { TimelineEntry } from './events.ts'
import { everybody } from './roles.ts'
import { count, countFromText } from './quantity.ts'
import { ValveHistory } from './valves.ts'

/**
 * One valve as a phone carries it: what it is, how it stands, and its last three entries. What a reading is likely to
 * show is known for the stops of rounds only.
 */
export const ValveCard = ValveHistory.pick({ valve: true, state: true, expects: true }).extend({
  timeline: z.array(TimelineEntry.pick({ event: true, says: true, standsAs: true })),
})
export type ValveCard = z.infer<typeof ValveCard>

/**
 * The part of the register that a phone carries, or what changed in it since a moment, in pages. A plant of up to 5,000
 * valves goes along whole; of a larger one, the areas of the rounds that are this person's to walk.
 */
export const showPocket = endpoint({
  method: 'GET',
  path: '/api/pocket',
  who: everybody,
  query: z.strictObject({
    /** `asOf` and `position` of an answer before: then only what changed since. */
    since: z.iso.datetime().optional(),
    position: countFromText('Position', 0, 1_000_000_000_000).optional(),
    /** `next` of the page before. */
    after: z.uuid().optional(),
  }),
  ok: z.object({
    /** By the clock of the server. */
    asOf: z.iso.datetime(),
    /** How many entries the register had then. */
    position: count('Position', 0, 1_000_000_000_000),
    cards: z.array(ValveCard),
    /** Valves that are no longer in the register. */
    gone: z.array(z.uuid()),
    /** Where the next page begins; null after the last. */
    next: z.uuid().nullable(),
    /** How many cards there are in all pages, for showing how far it is. */
    total: count('Cards', 0, 10_000_000),
  }),
  status: 200,
})
