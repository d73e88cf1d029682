import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { everybody } from './roles.ts'
import { Problem } from './problem.ts'
import { count, quantity } from './quantity.ts'
import { Finding, gap, reserve } from './reserve.ts'
import { text } from './text.ts'

/** Our word scale for a leak, from nothing seen to a steady run. `dry` is a finding too: no leak seen. */
export const LeakGrade = z.enum(['dry', 'damp', 'weep', 'drip', 'run'])
export type LeakGrade = z.infer<typeof LeakGrade>
/** How the stem moves by hand after the gland was touched. A stiff stem is a finding. */
export const StemFeel = z.enum(['free', 'firm', 'stiff', 'seized', 'not tried'])
/** By the name a site calls it: the library's, its own, or whatever was found in the box. */
export const PackingFamily = text(60, 2)
export const Cut = z.enum(['butt', 'skive', 'die-formed', 'unknown'])
export const MissedReason = z.enum(['no access', 'too hot', 'area shut', 'permit refused', 'not found', 'no time', 'other'])

/** Positive turns tighten. Slackening is possible, and shown with a finding. */
export const nutTurns = quantity({ label: 'Turns', unit: 'turn', min: -10, max: 10, step: 0.0833, usual: [0, 1.5] })
export const threadRemaining = quantity({
  label: 'Stud thread remaining',
  unit: 'mm',
  min: 0,
  max: 300,
  step: 0.5,
  usual: [0, 80],
})
export const ringSection = quantity({ label: 'Section', unit: 'mm', min: 1, max: 60, step: 0.1, usual: [3, 25] })
export const dropsPerMinute = quantity({ label: 'Drops per minute', unit: '1/min', min: 0, max: 1000, step: 1, usual: [0, 200] })
export const screeningValue = quantity({
  label: 'Screening value',
  unit: 'ppmv',
  min: 0,
  max: 1_000_000,
  step: 1,
  usual: [0, 100_000],
})

/** Length of the plume of steam that is seen. */
export const plume = quantity({ label: 'Plume', unit: 'm', min: 0, max: 50, step: 0.1, usual: [0, 5] })
/** By eye: as much as through a round hole so wide. */
export const opening = quantity({ label: 'As through a hole of', unit: 'mm', min: 0, max: 50, step: 0.1, usual: [0, 6] })
/** Where the stem stood while somebody looked: many glands leak in one position only. */
export const StemPosition = z.enum(['open', 'partly open', 'shut'])
/** What the line did while somebody looked: a gland without pressure proves nothing. */
export const DutyState = z.enum(['in service', 'standing by', 'starting up', 'shut down'])
/** What was done about a leak beside turning nuts, adding a ring or repacking. */
export const Treatment = z.enum([
  'bonnet bolts tightened',
  'lubricant injected',
  'sealant injected',
  'stem cleaned',
  'part renewed',
  'other',
])
/** Why a leak is not mended now. */
export const DeferReason = z.enum(['needs a shutdown', 'unsafe while running', 'mending would lose more', 'part on order'])

const rings = count('Rings', 1, 40, [3, 9])

/** What an old ring looks like, in our own words. */
export const RingCondition = z.enum([
  'sound',
  'hard',
  'crumbled',
  'flattened',
  'torn',
  'burnt',
  'washed out',
  'swollen',
  'squeezed out',
  'missing',
])
export type RingCondition = z.infer<typeof RingCondition>
/** What is likely to have made it so. */
export const RingCause = z.enum([
  'age',
  'heat',
  'what flows through',
  'rough stem',
  'bent stem',
  'worn box',
  'loose gland',
  'overtightened',
  'wrong size',
  'joints in line',
  'not known',
])
export type RingCause = z.infer<typeof RingCause>
const FoundRing = z.strictObject({ condition: RingCondition, cause: RingCause.optional() })
export type FoundRing = z.infer<typeof FoundRing>

const torqueOnNuts = quantity({ label: 'Torque on each nut', unit: 'N·m', min: 0.1, max: 100_000, step: 0.1, usual: [2, 2000] })
/** Taken from the store by the entry itself: metres of a reel, pieces of a box. What was issued before is not taken again. */
const FromStore = z.strictObject({
  lotId: z.uuid(),
  amount: quantity({ label: 'Taken', unit: '', min: 0.01, max: 10_000, step: 0.01, usual: [0.01, 200] }),
})
const fromStore = { fromStore: z.array(FromStore).min(1).max(12).optional() }
/** As printed on the reel or the box. */
const batch = { batch: text(40, 1).optional() }

const readingBody = {
  kind: z.literal('reading.taken'),
  gapLeft: gap.optional(),
  gapRight: gap.optional(),
  threadRemaining: threadRemaining.optional(),
  leak: LeakGrade.optional(),
  stem: StemFeel.optional(),
}
const nipBody = {
  kind: z.literal('gland.nipped'),
  turnsLeft: nutTurns,
  turnsRight: nutTurns,
  leakBefore: LeakGrade.optional(),
  leakAfter: LeakGrade.optional(),
  stem: StemFeel.optional(),
}
const leakBody = {
  kind: z.literal('leak.seen'),
  leak: LeakGrade,
  dropsPerMinute: dropsPerMinute.optional(),
  plume: plume.optional(),
  opening: opening.optional(),
  /** As the meter showed it; what it shows away from the valve is the background. */
  screeningValue: screeningValue.optional(),
  background: screeningValue.optional(),
  /** True when the meter stood at the end of its range. */
  isPegged: z.boolean().optional(),
  instrument: text(60, 1).optional(),
  calibratedOn: z.iso.date().optional(),
  stemPosition: StemPosition.optional(),
  duty: DutyState.optional(),
}
const treatedBody = {
  kind: z.literal('leak.treated'),
  treatment: Treatment,
  leakBefore: LeakGrade.optional(),
  leakAfter: LeakGrade.optional(),
}
/** A decision, kept like a fact: who allowed that a leak is not mended now, why, and until when. */
const deferredBody = {
  kind: z.literal('repair.deferred'),
  reason: DeferReason,
  approvedBy: text(60, 1),
  until: z.iso.date().optional(),
}
const repackBody = {
  kind: z.literal('packing.renewed'),
  family: PackingFamily,
  rings: rings.optional(),
  section: ringSection.optional(),
  cut: Cut.optional(),
  gapLeft: gap.optional(),
  gapRight: gap.optional(),
  /** True when the wheel was released after loading and did not overrun. */
  proved: z.boolean().optional(),
  /** True when every ring was seated by itself with its joint turned from the one below. */
  jointsStaggered: z.boolean().optional(),
  /** True when the nuts were brought to their torque in steps, alternately and equally. */
  loadedInSteps: z.boolean().optional(),
  torque: torqueOnNuts.optional(),
  /** The old rings in the order they came out, the one under the follower first. */
  found: z.array(FoundRing).min(1).max(40).optional(),
  doneBy: z.strictObject({ kind: z.enum(['own crew', 'contractor']), name: text(60) }).optional(),
  ...batch,
  ...fromStore,
}
const ringBody = {
  kind: z.literal('ring.added'),
  rings: count('Rings', 1, 6, [1, 2]),
  gapLeft: gap.optional(),
  gapRight: gap.optional(),
  ...batch,
  ...fromStore,
}
const missedBody = { kind: z.literal('visit.missed'), reason: MissedReason }

/** When it happened, by the clock of the device, with its offset from UTC. */
const TakenAt = z.iso.datetime({ offset: true })
const note = { note: text(500).optional() }

/** What stands in the place of a corrected entry: the same kinds, with their own time. */
const Replacement = z.discriminatedUnion('kind', [
  z.strictObject({ ...readingBody, takenAt: TakenAt, ...note }),
  z.strictObject({ ...nipBody, takenAt: TakenAt, ...note }),
  z.strictObject({ ...leakBody, takenAt: TakenAt, ...note }),
  z.strictObject({ ...repackBody, takenAt: TakenAt, ...note }),
  z.strictObject({ ...ringBody, takenAt: TakenAt, ...note }),
  z.strictObject({ ...missedBody, takenAt: TakenAt, ...note }),
  z.strictObject({ ...treatedBody, takenAt: TakenAt, ...note }),
  z.strictObject({ ...deferredBody, takenAt: TakenAt, ...note }),
])

export const EventId = z.uuid()
/** SHA-256 of a picture's bytes, in hex: its name wherever it goes. */
export const PhotoDigest = z.string().regex(/^[0-9a-f]{64}$/)

const every = {
  /** Made on the device, so that an entry sent twice is one entry. */
  id: EventId,
  version: z.literal(1),
  valveId: z.uuid(),
  takenAt: TakenAt,
  /** A name for the device, not for the person: the person is who is signed in. */
  device: text(60, 1),
  /** Who did it, where that is somebody other than the person signed in: paper typed in later, old records. */
  takenBy: text(60).optional(),
  /** Pictures that belong to the entry. They follow it, and may arrive long after. */
  photos: z.array(PhotoDigest).min(1).max(4).optional(),
  ...note,
}

/** A fact from the field, in the past tense. Never changed once accepted: a correction is a fact of its own. */
export const FieldEvent = z.discriminatedUnion('kind', [
  z.strictObject({ ...every, ...readingBody }),
  z.strictObject({ ...every, ...nipBody }),
  z.strictObject({ ...every, ...leakBody }),
  z.strictObject({ ...every, ...repackBody }),
  z.strictObject({ ...every, ...ringBody }),
  z.strictObject({ ...every, ...missedBody }),
  z.strictObject({ ...every, ...treatedBody }),
  z.strictObject({ ...every, ...deferredBody }),
  z.strictObject({
    ...every,
    kind: z.literal('fact.corrected'),
    corrects: EventId,
    reason: text(200, 1),
    /** Null takes the corrected entry back without putting another in its place. */
    replacement: Replacement.nullable(),
  }),
])
export type FieldEvent = z.infer<typeof FieldEvent>
/** What an entry of a kind may say; undefined for a kind that nobody knows. */
export const schemaOfKind = (kind: string) => FieldEvent.options.find((option) => option.shape.kind.value === kind)
export const eventKinds = FieldEvent.options.map((option) => option.shape.kind.value)
export type EventKind = (typeof eventKinds)[number]

const position = count('Place in the chain', 1, 1_000_000_000_000)

/** What became of one entry. A device deletes it on `accepted` and `already`, and keeps it on `refused`. */
export const Outcome = z.discriminatedUnion('outcome', [
  z.object({ id: z.string(), outcome: z.literal('accepted'), position, findings: z.array(Finding) }),
  z.object({ id: z.string(), outcome: z.literal('already'), position }),
  z.object({ id: z.string(), outcome: z.literal('refused'), problem: Problem }),
])
export type Outcome = z.infer<typeof Outcome>

/** Entries are unknown here on purpose: each is judged alone, so one bad entry does not refuse its neighbours. */
export const sendEvents = endpoint({
  method: 'POST',
  path: '/api/events',
  who: everybody,
  body: z.strictObject({ events: z.array(z.unknown()).min(1).max(200) }),
  ok: z.object({ outcomes: z.array(Outcome) }),
  status: 200,
})

/** One line of a valve's history, as a person reads it, with the entry itself. */
export const TimelineEntry = z.object({
  event: z.looseObject({ id: EventId, kind: z.string(), takenAt: z.string(), photos: z.array(PhotoDigest).optional() }),
  receivedAt: z.iso.datetime(),
  by: z.string(),
  device: z.string(),
  position,
  /** In words, with figures. */
  says: z.string(),
  reserveAfter: reserve.nullable(),
  findings: z.array(Finding),
  standsAs: z.enum(['as entered', 'corrected', 'taken back', 'correction']),
})
export type TimelineEntry = z.infer<typeof TimelineEntry>
