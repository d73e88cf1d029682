import { type Instant, instant, mm, turns } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Gland } from '../gland/gland.ts'
import { currentState } from './current-state.ts'
import { type Correction, type DatedFact, type Fact, factsAsTheyStand } from './facts.ts'
import { glandHistory } from './gland-history.ts'

const gland: Gland = {
  boxBore: mm(45),
  stemDiameter: mm(28),
  boxDepth: mm(48),
  noseLength: mm(20),
  leastEngagement: mm(3.2),
  keepClear: mm(3),
  studThread: 'M12',
}
const day = (count: number): Instant => instant(count * 86_400_000)

const reading = (
  gapLeft: number | null,
  gapRight: number | null,
  threadRemaining: number | null = null,
  stem: string | null = null,
): Fact => ({
  kind: 'reading.taken',
  gapLeft: gapLeft === null ? null : mm(gapLeft),
  gapRight: gapRight === null ? null : mm(gapRight),
  threadRemaining: threadRemaining === null ? null : mm(threadRemaining),
  stem,
  leak: null,
})
const nip = (left: number, right = left): Fact => ({
  kind: 'gland.nipped',
  turnsLeft: turns(left),
  turnsRight: turns(right),
  stem: null,
  leakBefore: null,
  leakAfter: null,
})
const repack = (gap: number | null, proved: boolean | null = true): Fact => ({
  kind: 'packing.renewed',
  gapLeft: gap === null ? null : mm(gap),
  gapRight: gap === null ? null : mm(gap),
  family: 'graphite braid',
  rings: 5,
  proved,
})

const dated = (...facts: Fact[]): DatedFact[] =>
  facts.map((fact, index) => ({ id: `f${String(index).padStart(3, '0')}`, takenAt: day(index), fact }))
const course = (facts: readonly DatedFact[], of: Gland = gland, corrections: readonly Correction[] = []) =>
  glandHistory(of, factsAsTheyStand(facts, corrections).standing)
const reserves = (...facts: Fact[]) => course(dated(...facts)).moments.map((moment) => moment.reserve)
const codes = (facts: Fact[], of: Gland = gland) =>
  course(dated(...facts), of)
    .moments.at(-1)
    ?.findings.map((finding) => finding.code)

describe('the follower', () => {
  it('moves by turns times pitch: half a turn on M12 leaves 7.6 - 0.875 - 3 = 3.725', () => {
    expect(reserves(reading(8, 7.6), nip(0.5))).toEqual([4.6, 3.725])
  })

  it('stays where it is when somebody looks, or could not come', () => {
    expect(reserves(reading(8, 8), { kind: 'leak.seen', leak: 'weep', netScreening: null }, { kind: 'visit.missed' })).toEqual([
      5, 5, 5,
    ])
  })

  it('is where it was read, whatever the turns said', () => {
    const { moments } = course(dated(reading(8, 8), nip(0.5), reading(7.3, 7.1)))
    expect(moments.map((moment) => moment.gapIsInferred)).toEqual([false, true, false])
    expect(moments.at(-1)?.reserve).toBeCloseTo(4.1, 9)
  })

  it('rises with a repack, and is unknown where nobody read the gap after it', () => {
    expect(reserves(reading(4, 4), repack(12))).toEqual([1, 9])
    expect(reserves(reading(4, 4), repack(null))).toEqual([1, null])
  })

  it('of which one side was read keeps the other side as it was worked out', () => {
    const last = course(dated(reading(8, 8), nip(1), reading(6, null))).moments.at(-1)
    expect([last?.gapLeft, last?.gapRight, last?.gapIsInferred]).toEqual([6, 6.25, true])
  })

  it('meets the end of the thread where a reading said, also after a repack', () => {
    const facts = dated(reading(8, 8, 3), repack(9))
    expect(course(facts).moments.map((moment) => [moment.reserve, moment.limitedBy])).toEqual([
      [3, 'thread'],
      [4, 'thread'],
    ])
  })
})

describe('what stands out', () => {
  it.each<[string, Fact[], string[]]>([
    [
      'turns and gap that disagree by more than a millimetre',
      [reading(8, 8), nip(0.5), reading(5.9, 7.1)],
      ['reserve/turns-disagree-with-gap', 'reserve/follower-tilts'],
    ],
    [
      'a gap that grew by itself',
      [reading(5, 5), reading(8, 8)],
      ['reserve/turns-disagree-with-gap', 'reserve/turns-disagree-with-gap'],
    ],
    ['a follower that tilts', [reading(8, 7.2)], ['reserve/follower-tilts']],
    ['a follower barely in the box', [reading(17, 17)], ['reserve/follower-barely-entered']],
    ['no travel left', [reading(3, 3.2)], ['reserve/no-travel-left']],
    ['taking up without travel', [reading(3, 3), nip(0.25)], ['reserve/nipped-without-travel', 'reserve/no-travel-left']],
    [
      'turns past the box face',
      [reading(0.5, 1.5), nip(0.5)],
      ['reserve/nipped-without-travel', 'reserve/turns-past-the-face', 'reserve/no-travel-left'],
    ],
    ['nuts taken up unevenly', [reading(8, 8), nip(0.75, 0.25)], ['reserve/nipped-unevenly', 'reserve/follower-tilts']],
    ['slackening', [reading(8, 8), nip(-0.5)], ['reserve/slackened']],
    ['packing without a gap read', [repack(null)], ['reserve/gap-unknown-after-packing']],
    ['packing that was not proved', [repack(10, false)], ['reserve/not-proved']],
    ['a stiff stem', [reading(8, 8, null, 'stiff')], ['reserve/stem-stiff']],
    ['nothing, on an ordinary day', [reading(8, 8), nip(0.5), reading(7.2, 7)], []],
  ])('%s', (_, facts, expected) => {
    expect(codes(facts)).toEqual(expected)
  })

  it('an unknown pitch: the last gap is then only the most it can be', () => {
    const { moments } = course(dated(reading(8, 8), nip(0.5)), { ...gland, studThread: null })
    expect(moments[1]).toMatchObject({ reserve: 5, gapIsInferred: true, findings: [{ code: 'reserve/pitch-unknown' }] })
  })

  it('no disagreement is found where the turns cannot be counted', () => {
    const unknown = { ...gland, studThread: null }
    expect(codes([reading(15, 15), nip(1.5), reading(12.4, 12.4)], unknown)).toEqual([])
    expect(codes([reading(15, 15), nip(1.5), reading(12.4, 12.4), reading(9, 12.4)], unknown)).toContain(
      'reserve/turns-disagree-with-gap',
    )
  })

  it('a stud thread read where no gap is known is said not to count', () => {
    expect(codes([reading(null, null, 4)])).toEqual(['reserve/thread-without-gap'])
  })

  it('a follower slackened farther than any stud is long stops there', () => {
    const last = course(dated(reading(190, 190), ...Array.from({ length: 40 }, () => nip(-10)))).moments.at(-1)
    expect([last?.gapLeft, last?.findings.map((finding) => finding.code)]).toEqual([
      500,
      expect.arrayContaining(['reserve/turns-out-of-reach']),
    ])
  })

  it('after many turns, a disagreement has to be larger: a quarter of the travel', () => {
    expect(codes([reading(19, 19), nip(3), reading(12.5, 12.5)])).toEqual([])
    expect(codes([reading(19, 19), nip(3), reading(12.3, 12.3)])).toEqual([
      'reserve/turns-disagree-with-gap',
      'reserve/turns-disagree-with-gap',
    ])
  })
})

describe('packing lives', () => {
  it('run from repack to repack, the first from before the records', () => {
    const { lives } = course(dated(reading(4, 4), repack(12), nip(0.5), repack(13)))
    expect(lives.map(({ from, to }) => [from, to])).toEqual([
      [null, day(1)],
      [day(1), day(3)],
      [day(3), null],
    ])
  })
})

describe('corrections', () => {
  const facts = dated(reading(8, 8), nip(0.5))
  const takeBack: Correction = { id: 'c1', takenAt: day(5), corrects: 'f001', replacement: null }

  it('take a fact back, or put another in its place; the latest holds', () => {
    expect(course(facts, gland, [takeBack]).moments.at(-1)?.reserve).toBe(5)
    const again: Correction = { id: 'c2', takenAt: day(6), corrects: 'f001', replacement: { takenAt: day(1), fact: nip(0.25) } }
    for (const order of [
      [takeBack, again],
      [again, takeBack],
    ])
      expect(course(facts, gland, order).moments.at(-1)?.reserve).toBe(4.5625)
  })

  it('of a fact that has not arrived change nothing', () => {
    expect(course(facts, gland, [{ ...takeBack, corrects: 'not here' }]).moments.at(-1)?.reserve).toBe(4.125)
  })
})

const anyFact: fc.Arbitrary<Fact> = fc.oneof(
  fc
    .tuple(fc.double({ min: 0, max: 60, noNaN: true }), fc.option(fc.double({ min: 0, max: 60, noNaN: true })))
    .map(([left, right]) => reading(left, right, right)),
  fc
    .tuple(fc.double({ min: -10, max: 10, noNaN: true }), fc.double({ min: -10, max: 10, noNaN: true }))
    .map(([left, right]) => nip(left, right)),
  fc.option(fc.double({ min: 0, max: 60, noNaN: true })).map((gap) => repack(gap)),
  fc.constant<Fact>({ kind: 'ring.added', gapLeft: null, gapRight: mm(9) }),
  fc.constant<Fact>({ kind: 'visit.missed' }),
)

it('whatever the facts, no figure is NaN, no gap is negative, and the order they came in does not matter', () => {
  fc.assert(
    fc.property(fc.array(anyFact, { maxLength: 30 }), fc.integer(), (facts, seed) => {
      // Ids against the order of time: a history ordered by id would be another.
      const inOrder = dated(...facts).map((fact, index) => ({ ...fact, id: `f${999 - index}` }))
      const shuffled = inOrder.toSorted((a, b) => ((a.takenAt * 7919 + seed) % 101) - ((b.takenAt * 7919 + seed) % 101))
      const { moments } = course(inOrder)
      for (const { gapLeft, gapRight, reserve } of moments) {
        for (const figure of [gapLeft, gapRight, reserve]) if (figure !== null) expect(Number.isFinite(figure)).toBe(true)
        expect(Math.min(gapLeft ?? 0, gapRight ?? 0)).toBeGreaterThanOrEqual(0)
      }
      expect(moments.map((moment) => moment.at)).toEqual(inOrder.map((fact) => fact.takenAt))
      expect(course(shuffled)).toEqual({ moments, lives: course(inOrder).lives })
    }),
  )
})

describe('the state', () => {
  it('knows when it was last seen, not counting a visit missed', () => {
    const facts = dated(reading(8, 8), { kind: 'leak.seen', leak: 'weep', netScreening: null }, { kind: 'visit.missed' })
    expect(currentState(gland, factsAsTheyStand(facts, []).standing).lastSeenAt).toBe(day(1))
  })

  it('dates a spent gland by the day it became so', () => {
    const facts = dated(reading(8, 8), reading(3, 3), { kind: 'leak.seen', leak: 'weep', netScreening: null }, reading(2.9, 2.9))
    expect(currentState(gland, factsAsTheyStand(facts, []).standing).spentSince).toBe(day(1))
  })

  it('of a gland nobody has entered anything for is all unknown', () => {
    expect(currentState(gland, [])).toEqual({
      gapLeft: null,
      gapRight: null,
      gapIsInferred: false,
      reserve: null,
      limitedBy: null,
      spentSince: null,
      packedAt: null,
      packingFamily: null,
      lastSeenAt: null,
      findings: [],
    })
  })
})
