import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { count, quantity } from './quantity.ts'
import { everybody, registerKeepers } from './roles.ts'
import { text } from './text.ts'
import { ValveTag } from './valves.ts'

export const OutageId = z.uuid()

/** Trades a repack takes hours of. Isolating and scaffolding are done once for a boundary, fitting for each valve. */
export const trades = ['fitting', 'scaffolding', 'isolating'] as const
export type Trade = (typeof trades)[number]

const hoursOf = (label: string) => quantity({ label, unit: 'h', min: 0, max: 1e6, step: 0.25, usual: [0, 5000] })
export const TradeHours = z.strictObject({
  fitting: hoursOf('Hours of fitting'),
  scaffolding: hoursOf('Hours of scaffolding'),
  isolating: hoursOf('Hours of isolating'),
})
export type TradeHours = z.infer<typeof TradeHours>

/** A first day nobody is sure of: the earliest it may be, the likeliest, the latest. All alike when it is settled. */
const firstDay = { earliestOn: z.iso.date(), likelyOn: z.iso.date(), latestOn: z.iso.date() }

const outageFields = {
  name: text(80, 1),
  ...firstDay,
  days: count('Days', 1, 365, [1, 60]),
  hours: TradeHours,
  /** Areas that are down; empty means the whole site. */
  areaCodes: z.array(AreaCode).max(200),
}

export const OutageInput = z
  .strictObject(outageFields)
  .refine(({ earliestOn, likelyOn }) => earliestOn <= likelyOn, {
    path: ['likelyOn'],
    error: 'The likeliest first day is before the earliest',
  })
  .refine(({ likelyOn, latestOn }) => likelyOn <= latestOn, {
    path: ['latestOn'],
    error: 'The latest first day is before the likeliest',
  })

/** `planned` until it is over or called off. */
export const OutageState = z.enum(['planned', 'over', 'called off'])
export type OutageState = z.infer<typeof OutageState>

export const Outage = z.object({
  outageId: OutageId,
  ...outageFields,
  state: OutageState,
  /** First and last day as they came, once it is over. */
  startedOn: z.iso.date().nullable(),
  endedOn: z.iso.date().nullable(),
  revision: count('Revision', 1, 1_000_000),
  /** Repacks of the plan in use that are in it. */
  repacks: count('Repacks', 0, 1_000_000),
})
export type Outage = z.infer<typeof Outage>

export const listOutages = endpoint({
  method: 'GET',
  path: '/api/outages',
  who: everybody,
  ok: z.object({ outages: z.array(Outage) }),
  status: 200,
})

export const addOutage = endpoint({
  method: 'POST',
  path: '/api/outages',
  who: registerKeepers,
  body: OutageInput,
  ok: Outage,
  status: 201,
})

const byOutage = z.strictObject({ outageId: OutageId })
const revision = count('Revision', 1, 1_000_000)

export const changeOutage = endpoint({
  method: 'PUT',
  path: '/api/outages/:outageId',
  who: registerKeepers,
  params: byOutage,
  body: z.strictObject({ revision, outage: OutageInput }),
  ok: Outage,
  status: 200,
})

/** Puts down when it really was; from then on there is a review of it. */
export const endOutage = endpoint({
  method: 'POST',
  path: '/api/outages/:outageId/end',
  who: registerKeepers,
  params: byOutage,
  body: z
    .strictObject({ revision, startedOn: z.iso.date(), endedOn: z.iso.date() })
    .refine(({ startedOn, endedOn }) => startedOn <= endedOn, { path: ['endedOn'], error: 'The last day is before the first' }),
  ok: Outage,
  status: 200,
})

export const callOffOutage = endpoint({
  method: 'POST',
  path: '/api/outages/:outageId/call-off',
  who: registerKeepers,
  params: byOutage,
  body: z.strictObject({ revision }),
  ok: Outage,
  status: 200,
})

const many = (label: string) => count(label, 0, 10_000_000)

/** What became of one valve of an outage. */
export const ReviewedRepack = z.object({
  tag: ValveTag,
  description: z.string(),
  areaCode: AreaCode,
  isPlanned: z.boolean(),
  /** Null where it was not repacked. */
  repackedOn: z.iso.date().nullable(),
  family: z.string().nullable(),
  /** Own crew, or the contractor, who did it. */
  doneBy: z.string().nullable(),
  isProved: z.boolean().nullable(),
  /** Days from the repack to the first leak within 30 days; null where none was seen. */
  leakedAfterDays: many('Days').nullable(),
  /** Made: looked at, or taken up, since. Due: its day has not come. Lost: its day is over and nobody was there. */
  followUp: z.enum(['made', 'due', 'lost']).nullable(),
  followUpOn: z.iso.date().nullable(),
})
export type ReviewedRepack = z.infer<typeof ReviewedRepack>

const ReviewGroup = z.object({ name: z.string(), done: many('Done'), leaked: many('Leaked'), followUpLost: many('Lost') })

/** An outage looked back on: planned, done, not done; leaks within 30 days by crew and family; follow-ups. */
export const OutageReview = z.object({
  outage: Outage,
  planned: many('Planned'),
  done: many('Planned and done'),
  notDone: many('Planned and not done'),
  extra: many('Done without a plan'),
  leaked: many('Leaked within 30 days'),
  followUpLost: many('Follow-ups lost'),
  /** The 30 days of the last repack are over. */
  isComplete: z.boolean(),
  byCrew: z.array(ReviewGroup),
  byFamily: z.array(ReviewGroup),
  valves: z.array(ReviewedRepack),
})
export type OutageReview = z.infer<typeof OutageReview>

export const reviewOutage = endpoint({
  method: 'GET',
  path: '/api/outages/:outageId/review',
  who: everybody,
  params: byOutage,
  ok: OutageReview,
  status: 200,
})
