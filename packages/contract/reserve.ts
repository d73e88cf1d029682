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

export const GlandState = z.object({
  gapLeft: gapNow.nullable(),
  gapRight: gapNow.nullable(),
  /** True when the last word on the gap is worked out from turns and not read. */
  gapIsInferred: z.boolean(),
  reserve: reserve.nullable(),
  reserveLimitedBy: ReserveLimit.nullable(),
  /** Straight line through this packing life; null where there is too little to draw one. */
  runsOutOn: z.iso.date().nullable(),
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
