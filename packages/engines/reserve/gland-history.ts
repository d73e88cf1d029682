import { type Instant, type Millimetre, mm } from '@glandkeeper/units/quantity'
import type { Gland } from '../gland/gland.ts'
import { travelOfTurns } from '../threads/stud-threads.ts'
import { type Fact, movesFollower, type StandingFact } from './facts.ts'
import { type ReserveFinding, reserveRules, type Side } from './findings.ts'
import { leastGapOf, type ReserveLimit, reserveOf } from './reserve.ts'

/** One side of the follower: where it stands, and how that is known. */
interface SideCourse {
  readonly gap: Millimetre | null
  readonly isInferred: boolean
  /** Travel that turns have used since this side was last read; null when somebody turned and nobody knows how far. */
  readonly travelSinceRead: number | null
}

interface Course {
  readonly left: SideCourse
  readonly right: SideCourse
  /** Gap at which the nut runs out of thread. Studs outlive packings, so it stays over a repack. */
  readonly gapAtThreadEnd: Millimetre | null
}

/** The gland right after one fact. */
export interface Moment {
  readonly factId: string
  readonly at: Instant
  readonly kind: Fact['kind']
  readonly gapLeft: Millimetre | null
  readonly gapRight: Millimetre | null
  readonly gapIsInferred: boolean
  readonly reserve: Millimetre | null
  readonly limitedBy: ReserveLimit | null
  readonly findings: readonly ReserveFinding[]
}

/** From one repack to the next; the first known one may have begun before the records. */
export interface PackingLife {
  readonly from: Instant | null
  readonly to: Instant | null
  readonly family: string | null
  readonly rings: number | null
}

export interface GlandHistory {
  readonly moments: readonly Moment[]
  readonly lives: readonly PackingLife[]
}

/** No follower stands farther off its box than this. */
const FARTHEST_GAP = 500

const unknownSide: SideCourse = { gap: null, isInferred: false, travelSinceRead: 0 }

/**
 * The course of one gland through its facts, in the order they were taken: where the follower stood after each,
 * read or worked out from turns times pitch, what travel was left, and what stood out.
 *
 * Holds while the follower moves only when somebody turns a nut. Facts that are odd are kept and flagged.
 *
 * @param facts as they stand, in order: see factsAsTheyStand
 * @returns one moment for each fact; never NaN
 * @example glandHistory(gland, standing).moments.at(-1)?.reserve // → 3.6
 */
export function glandHistory(gland: Gland, facts: readonly StandingFact[]): GlandHistory {
  let course: Course = { left: unknownSide, right: unknownSide, gapAtThreadEnd: null }
  const moments: Moment[] = []
  for (const { id, takenAt, fact } of facts) {
    const step = after(gland, course, fact)
    course = step.course
    moments.push(momentOf(gland, course, { factId: id, at: takenAt, kind: fact.kind }, step.findings, fact))
  }
  return { moments, lives: packingLives(facts) }
}

interface Step {
  readonly course: Course
  readonly findings: readonly ReserveFinding[]
}

function after(gland: Gland, course: Course, fact: Fact): Step {
  switch (fact.kind) {
    case 'reading.taken':
      return afterReading(course, fact)
    case 'gland.nipped':
      return afterNip(gland, course, fact)
    case 'packing.renewed':
    case 'ring.added':
      return afterPacking(course, fact)
    case 'leak.seen':
    case 'leak.treated':
    case 'repair.deferred':
    case 'visit.missed':
      return { course, findings: [] }
  }
}

function afterReading(course: Course, fact: Extract<Fact, { kind: 'reading.taken' }>): Step {
  const findings: ReserveFinding[] = [
    ...disagreement('left', course.left, fact.gapLeft),
    ...disagreement('right', course.right, fact.gapRight),
    ...stiffness(fact.stem),
  ]
  const left = sideRead(course.left, fact.gapLeft)
  const right = sideRead(course.right, fact.gapRight)
  const leastGap = leastGapOf(left.gap, right.gap)
  if (fact.threadRemaining !== null && leastGap === null) findings.push({ code: 'reserve/thread-without-gap' })
  const gapAtThreadEnd =
    fact.threadRemaining === null || leastGap === null ? course.gapAtThreadEnd : mm(leastGap - fact.threadRemaining)
  return { course: { left, right, gapAtThreadEnd }, findings }
}

function sideRead(side: SideCourse, read: Millimetre | null): SideCourse {
  return read === null ? side : { gap: read, isInferred: false, travelSinceRead: 0 }
}

function disagreement(name: Side, side: SideCourse, read: Millimetre | null): ReserveFinding[] {
  if (read === null || side.gap === null || side.travelSinceRead === null) return []
  const allowed = Math.max(reserveRules.disagreement, reserveRules.disagreementShare * side.travelSinceRead)
  if (!(Math.abs(read - side.gap) > allowed)) return []
  return [{ code: 'reserve/turns-disagree-with-gap', side: name, expected: side.gap, read }]
}

function afterNip(gland: Gland, course: Course, fact: Extract<Fact, { kind: 'gland.nipped' }>): Step {
  const { turnsLeft, turnsRight } = fact
  const findings: ReserveFinding[] = [...stiffness(fact.stem)]
  if (Math.abs(turnsLeft - turnsRight) > reserveRules.unevenTurns)
    findings.push({ code: 'reserve/nipped-unevenly', turnsLeft, turnsRight })
  if (turnsLeft < 0 || turnsRight < 0) findings.push({ code: 'reserve/slackened', turnsLeft, turnsRight })
  const before = reserveOf(gland, {
    leastGap: leastGapOf(course.left.gap, course.right.gap),
    gapAtThreadEnd: course.gapAtThreadEnd,
  })
  if (before !== null && before.reserve <= 0 && turnsLeft + turnsRight > 0) {
    findings.push({ code: 'reserve/nipped-without-travel', reserve: before.reserve })
  }
  const left = sideTurned(gland, course.left, 'left', turnsLeft)
  const right = sideTurned(gland, course.right, 'right', turnsRight)
  if (left === null || right === null) {
    // How far the follower went is not known, so the last gap is only what it was at most.
    const aged = (side: SideCourse): SideCourse => ({ ...side, isInferred: true, travelSinceRead: null })
    findings.push({ code: 'reserve/pitch-unknown', studThread: gland.studThread })
    return { course: { ...course, left: aged(course.left), right: aged(course.right) }, findings }
  }
  return {
    course: { ...course, left: left.side, right: right.side },
    findings: [...findings, ...left.findings, ...right.findings],
  }
}

function sideTurned(
  gland: Gland,
  side: SideCourse,
  name: Side,
  taken: Extract<Fact, { kind: 'gland.nipped' }>['turnsLeft'],
): { side: SideCourse; findings: ReserveFinding[] } | null {
  const travelled = gland.studThread === null ? null : travelOfTurns(gland.studThread, taken)
  if (!travelled?.ok) return null
  const travelSinceRead = side.travelSinceRead === null ? null : side.travelSinceRead + travelled.travel
  if (side.gap === null) return { side: { ...side, travelSinceRead }, findings: [] }
  const gap = withoutFloatDust(side.gap - travelled.travel)
  const stopped = Math.min(Math.max(gap, 0), FARTHEST_GAP)
  // Metal stops at metal, and a follower slackened off its studs is none: such turns were miscounted, or the reading wrong.
  const findings: ReserveFinding[] =
    gap < 0
      ? [{ code: 'reserve/turns-past-the-face', side: name, by: 0 - gap }]
      : gap > FARTHEST_GAP
        ? [{ code: 'reserve/turns-out-of-reach', side: name, gap }]
        : []
  return { side: { gap: mm(stopped), isInferred: true, travelSinceRead }, findings }
}

function afterPacking(course: Course, fact: Extract<Fact, { kind: 'packing.renewed' | 'ring.added' }>): Step {
  const findings: ReserveFinding[] = []
  if (fact.gapLeft === null && fact.gapRight === null) findings.push({ code: 'reserve/gap-unknown-after-packing' })
  if (fact.kind === 'packing.renewed' && fact.proved === false) findings.push({ code: 'reserve/not-proved' })
  return {
    course: { ...course, left: sideRead(unknownSide, fact.gapLeft), right: sideRead(unknownSide, fact.gapRight) },
    findings,
  }
}

function stiffness(stem: string | null): ReserveFinding[] {
  return stem === 'stiff' || stem === 'seized' ? [{ code: 'reserve/stem-stiff', stem }] : []
}

function momentOf(
  gland: Gland,
  course: Course,
  head: Pick<Moment, 'factId' | 'at' | 'kind'>,
  stepFindings: readonly ReserveFinding[],
  fact: Fact,
): Moment {
  const { left, right, gapAtThreadEnd } = course
  const reserve = reserveOf(gland, { leastGap: leastGapOf(left.gap, right.gap), gapAtThreadEnd })
  const known = [left, right].filter((side) => side.gap !== null)
  return {
    ...head,
    gapLeft: left.gap,
    gapRight: right.gap,
    gapIsInferred: known.some((side) => side.isInferred),
    reserve: reserve && withoutFloatDust(reserve.reserve),
    limitedBy: reserve && reserve.limitedBy,
    findings: [...stepFindings, ...positionFindings(gland, course, fact, reserve && reserve.reserve)],
  }
}

/** What the position itself says, once per entry that could have changed it. */
function positionFindings(gland: Gland, { left, right }: Course, fact: Fact, reserve: number | null): ReserveFinding[] {
  if (!movesFollower(fact.kind)) return []
  const findings: ReserveFinding[] = []
  if (left.gap !== null && right.gap !== null && Math.abs(left.gap - right.gap) > reserveRules.tilt) {
    findings.push({ code: 'reserve/follower-tilts', gapLeft: left.gap, gapRight: right.gap })
  }
  const widest = Math.max(left.gap ?? 0, right.gap ?? 0)
  if (gland.noseLength !== null && widest > 0 && gland.noseLength - widest < gland.leastEngagement) {
    findings.push({
      code: 'reserve/follower-barely-entered',
      engagement: withoutFloatDust(gland.noseLength - widest),
      leastEngagement: gland.leastEngagement,
    })
  }
  if (reserve !== null && reserve <= 0) findings.push({ code: 'reserve/no-travel-left', reserve: withoutFloatDust(reserve) })
  return findings
}

function packingLives(facts: readonly StandingFact[]): PackingLife[] {
  const repacks = facts.flatMap(({ takenAt, fact }) =>
    fact.kind === 'packing.renewed' ? [{ from: takenAt, family: fact.family, rings: fact.rings }] : [],
  )
  const first = facts[0]
  const lives = repacks.map((repack, index) => ({ ...repack, to: repacks[index + 1]?.from ?? null }))
  const beganBeforeRecords = first !== undefined && first.fact.kind !== 'packing.renewed'
  return beganBeforeRecords ? [{ from: null, to: repacks[0]?.from ?? null, family: null, rings: null }, ...lives] : lives
}

/** Tenths of a millimetre are measured; a millionth is the dust of binary fractions. */
function withoutFloatDust(value: number): Millimetre {
  return mm(Math.round(value * 1e6) / 1e6)
}
