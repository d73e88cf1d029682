import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { LeakGrade, screeningValue } from './events.ts'
import { count, countFromText, quantity } from './quantity.ts'
import { reserve } from './reserve.ts'
import { everybody } from './roles.ts'
import { text } from './text.ts'
import { ValveTag } from './valves.ts'

/** Open: nobody has done anything since it was last seen. Attempted: something was done, nobody has looked since. Verified: seen without a leak. */
export const LeakState = z.enum(['open', 'attempted', 'verified'])
export type LeakState = z.infer<typeof LeakState>

/** How long the packing had been in the box when a leak was first seen. */
export const AgeBand = z.enum([
  'first month',
  '1 to 6 months',
  '6 to 12 months',
  '1 to 2 years',
  '2 to 4 years',
  'over 4 years',
  'not known',
])
export type AgeBand = z.infer<typeof AgeBand>

const many = (label: string) => count(label, 0, 1_000_000_000)
const days = (label: string) => quantity({ label, unit: 'day', min: 0, max: 1e6, step: 0.1 })

/** One leak from the first time it was seen until somebody saw it gone; seen again within thirty days it is the same leak. */
const leak = {
  /** That of the entry that saw it first. */
  leakId: z.uuid(),
  openedAt: z.iso.datetime(),
  state: LeakState,
  /** The worst that was seen; null where only a meter showed it. */
  worst: LeakGrade.nullable(),
  /** Above background; null where no meter was held to it. */
  worstScreening: screeningValue.nullable(),
  attempts: many('Attempts'),
  firstAttemptAt: z.iso.datetime().nullable(),
  verifiedAt: z.iso.datetime().nullable(),
  reopened: many('Times it came back'),
  deferredUntil: z.iso.date().nullable(),
  isDeferred: z.boolean(),
  packedAt: z.iso.datetime().nullable(),
  family: z.string().nullable(),
}
export const Leak = z.object(leak)
export type Leak = z.infer<typeof Leak>

export const LeakRow = z.object({
  ...leak,
  tag: ValveTag,
  description: z.string(),
  areaCode: AreaCode,
  service: z.string(),
})
export type LeakRow = z.infer<typeof LeakRow>

/** One list for every number on the pages of leaks: what is counted there is listed here. */
export const leakFilters = {
  state: z.enum(['not verified', ...LeakState.options]).optional(),
  area: AreaCode.optional(),
  service: text(40).optional(),
  family: text(60).optional(),
  age: AgeBand.optional(),
  /** Seen first in this month, by the calendar of the site: `2026-03`. */
  month: z
    .string()
    .regex(/^\d{4}-\d{2}$/)
    .optional(),
  /** Seen first within thirty days after the end of this outage. */
  afterOutage: z.uuid().optional(),
  tag: ValveTag.optional(),
}

export const listLeaks = endpoint({
  method: 'GET',
  path: '/api/leaks',
  who: everybody,
  query: z.strictObject({
    ...leakFilters,
    order: z.enum(['newest first', 'oldest first', 'worst first']).default('newest first'),
    offset: countFromText('Offset', 0, 10_000_000).default(0),
    limit: countFromText('Limit', 1, 500).default(100),
  }),
  ok: z.object({ total: many('Leaks'), valves: many('Valves'), rows: z.array(LeakRow) }),
  status: 200,
})

/** Leaks of each month, the oldest first, and how many stand open now. */
export const showLeaksByMonth = endpoint({
  method: 'GET',
  path: '/api/leaks/by-month',
  who: everybody,
  query: z.strictObject({ area: AreaCode.optional(), service: text(40).optional() }),
  ok: z.object({
    open: many('Open'),
    attempted: many('Attempted'),
    months: z.array(z.object({ month: z.string(), leaks: many('Leaks') })),
    services: z.array(z.object({ service: z.string(), valves: many('Valves') })),
  }),
  status: 200,
})

/** What was done or seen of one leak, in the order it happened. */
export const LeakStep = z.object({
  entryId: z.uuid(),
  at: z.iso.datetime(),
  what: z.enum(['seen', 'came back', 'attempt', 'put off', 'seen without a leak']),
  says: z.string(),
  by: z.string(),
})
export type LeakStep = z.infer<typeof LeakStep>

const nipGap = days('Days between nips')

/** What changed before a leak: figures only, null where too little is known. */
export const BeforeLeak = z.object({
  /** Of the packing life it came in, the oldest first. */
  daysBetweenNips: z.array(nipGap),
  /** Middle of the first half, middle of the last half of them. */
  nipsCloser: z.object({ first: nipGap, last: nipGap }).nullable(),
  /** Travel used in a leak-free month: the three months before the leak, and the time before that. */
  usedLately: quantity({ label: 'Travel used lately', unit: 'mm', min: -500, max: 500, step: 0.01 }).nullable(),
  usedBefore: quantity({ label: 'Travel used before', unit: 'mm', min: -500, max: 500, step: 0.01 }).nullable(),
  reserveThen: reserve.nullable(),
  packingAgeDays: days('Age of the packing').nullable(),
  family: z.string().nullable(),
  familyBefore: z.string().nullable(),
  earlierLeaks: many('Earlier leaks in this packing'),
  /** Who made the last entry that turned a nut or packed the box before it, and their crew. */
  lastTouchedBy: z.string().nullable(),
  lastTouchedCrew: z.string().nullable(),
  /** What that entry says, and how many days before the leak it was. */
  lastTouchedSays: z.string().nullable(),
  lastTouchedDays: days('Days before').nullable(),
  /** The figure of its packing family, and what goes through: for a look whether it is too hot for it. */
  temperature: quantity({ label: 'Temperature', unit: '°C', min: -273, max: 1000, step: 1 }).nullable(),
  hottestOfFamily: quantity({ label: 'Hottest the packing is meant for', unit: '°C', min: -273, max: 1000, step: 1 }).nullable(),
  /** What stood out at the valve within ninety days before. */
  findings: z.array(z.object({ at: z.iso.datetime(), detail: z.string() })),
})
export type BeforeLeak = z.infer<typeof BeforeLeak>

const rate = quantity({ label: 'Leaks in 1,000 valve-months', unit: '', min: 0, max: 1e9, step: 0.1 })

export const LeakHistory = z.object({
  leaks: z.array(Leak.extend({ steps: z.array(LeakStep), before: BeforeLeak })),
  watchedSince: z.iso.datetime().nullable(),
  daysWatched: days('Days watched'),
  daysLeaking: days('Days leaking'),
  nips: many('Nips'),
  nipsPerDryMonth: quantity({ label: 'Nips in a dry month', unit: '', min: 0, max: 1e6, step: 0.01 }).nullable(),
  leaksPerThousandMonths: rate.nullable(),
})
export type LeakHistory = z.infer<typeof LeakHistory>

const byTag = z.strictObject({ tag: ValveTag })

/** Every leak of one valve, what was done about it, and what changed before it. */
export const showLeakHistory = endpoint({
  method: 'GET',
  path: '/api/valves/:tag/leaks',
  who: everybody,
  params: byTag,
  ok: LeakHistory,
  status: 200,
})

export const printLeakHistory = endpoint({
  method: 'GET',
  path: '/api/valves/:tag/leak-history.pdf',
  who: everybody,
  params: byTag,
  ok: z.instanceof(Uint8Array),
  okKind: 'pdf',
  status: 200,
})
