import { quantity, count } from './quantity.ts'
import { z } from 'zod'

/** Our four words for how a gland stands. */
export const Standing = z.enum(['ample', 'watch', 'book', 'spent'])
export type Standing = z.infer<typeof Standing>

export const gap = quantity({ label: 'Gap', unit: 'mm', min: 0, max: 200, step: 0.1, usual: [0, 40] })
/** As worked out: turns can put a follower where no one has read it. */
export const gapNow = quantity({ label: 'Gap now', unit: 'mm', min: 0, max: 500, step: 0.1 })
export const reserve = quantity({ label: 'Reserve', unit: 'mm', min: -500, max: 500, step: 0.1 })

/** Which of the three limits is met first. */
export const ReserveLimit = z.enum(['gap', 'nose', 'thread'])

/** What stands out about an entry or a gland: kept and shown, never a reason to refuse. */
export const Finding = z.object({ code: z.string(), detail: z.string() })
export type Finding = z.infer<typeof Finding>

export const chance = quantity({ label: 'Chance', unit: 'ratio', min: 0, max: 1, step: 0.01 })
const deviation = quantity({ label: 'Standard deviation', unit: 'mm', min: 0, max: 1000, step: 0.1 })

/** A day of the forecast; null is beyond twenty years. */
const ForecastDay = z.iso.date().nullable()

/**
 * When the reserve is used up: not one day but days with their chance. Four times in five it lies between `early` and
 * `late`, nineteen times in twenty between `earliest` and `latest`.
 */
export const ReserveForecast = z.object({
  countedFrom: z.iso.datetime(),
  /** The smooth level at `countedFrom`: the follower itself moves in steps about it. */
  level: reserve,
  levelDeviation: deviation,
  earliest: ForecastDay,
  early: ForecastDay,
  middle: ForecastDay,
  late: ForecastDay,
  latest: ForecastDay,
  chanceBeforeStop: chance,
  stopOn: z.iso.date(),
  readingsUsed: count('Readings used', 0, 1_000_000),
  earlierLivesUsed: count('Earlier lives used', 0, 10_000),
  leftOut: z.array(z.object({ at: z.iso.datetime(), reserve, why: z.string() })),
  /** Like valves it leans on, and how well they are known. */
  group: z.string(),
  origin: z.enum(['set by us', 'fitted to the plant', 'fitted to the group']),
  /** What a reader should know, in plain words. */
  says: z.array(z.string()),
})
export type ReserveForecast = z.infer<typeof ReserveForecast>

export const LookRule = z.enum([
  'after a repack',
  'after a nip',
  'leak interval',
  'reserve',
  'longest time between looks',
  'never seen',
])
export const NextLook = z.object({
  on: z.iso.date(),
  rule: LookRule,
  /** Which rule decided, as a sentence. */
  because: z.string(),
  weighed: z.array(z.object({ rule: LookRule, on: z.iso.date() })),
})
export type NextLook = z.infer<typeof NextLook>

/** What a reading now is likely to show: one far off is asked for again on the spot. */
export const ExpectedReading = z.object({ reserve, deviation })
export type ExpectedReading = z.infer<typeof ExpectedReading>

export const GlandState = z.object({
  gapLeft: gapNow.nullable(),
  gapRight: gapNow.nullable(),
  /** True when the last word on the gap is worked out from turns and not read. */
  gapIsInferred: z.boolean(),
  reserve: reserve.nullable(),
  reserveLimitedBy: ReserveLimit.nullable(),
  /** The middle of the forecast, or the day it was first seen spent; null where nothing can be forecast. */
  runsOutOn: z.iso.date().nullable(),
  forecast: ReserveForecast.nullable(),
  nextLook: NextLook.nullable(),
  standing: Standing,
  /** One sentence: why it stands there. */
  why: z.string(),
  findings: z.array(Finding),
  packedOn: z.iso.datetime().nullable(),
  packingFamily: z.string().nullable(),
  lastSeenAt: z.iso.datetime().nullable(),
  entryCount: count('Entries', 0, 1_000_000),
})
export type GlandState = z.infer<typeof GlandState>

/** One step of the reserve plot. */
export const ReservePoint = z.object({ at: z.iso.datetime(), reserve: reserve.nullable(), isInferred: z.boolean() })
export type ReservePoint = z.infer<typeof ReservePoint>
