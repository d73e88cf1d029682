import { days, instant, ppmv, turns } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Fact, LeakGrade, StandingFact } from '../reserve/facts.ts'
import { exposureByAge } from './exposure-by-age.ts'
import { leakExposure } from './leak-exposure.ts'
import { type LeakRule, leaksOf } from './leaks.ts'

const DAY = 86_400_000
const grade = fc.constantFrom<LeakGrade>('dry', 'dry', 'damp', 'weep', 'drip', 'run')
const maybe = fc.option(grade, { nil: null })
const half = fc.constantFrom(-0.5, 0, 0.5).map(turns)
const noGap = { gapLeft: null, gapRight: null } as const
const fact: fc.Arbitrary<Fact> = fc.oneof(
  maybe.map((leak): Fact => ({ kind: 'reading.taken', ...noGap, threadRemaining: null, stem: null, leak })),
  fc
    .tuple(grade, fc.constantFrom(null, 0, 9999, 10_000, 50_000))
    .map(([leak, net]): Fact => ({ kind: 'leak.seen', leak, netScreening: net === null ? null : ppmv(net) })),
  fc.tuple(maybe, maybe, half, half).map(([leakBefore, leakAfter, turnsLeft, turnsRight]): Fact => ({
    kind: 'gland.nipped',
    turnsLeft,
    turnsRight,
    stem: null,
    leakBefore,
    leakAfter,
  })),
  fc
    .tuple(maybe, maybe)
    .map(([leakBefore, leakAfter]): Fact => ({ kind: 'leak.treated', treatment: 'grease', leakBefore, leakAfter })),
  fc.constantFrom<Fact>(
    { kind: 'packing.renewed', ...noGap, family: 'flax', rings: null, proved: null },
    { kind: 'ring.added', ...noGap },
    { kind: 'repair.deferred', until: null },
    { kind: 'visit.missed' },
  ),
)
/** Steps of nought, so that several entries share a moment. */
const history = fc.array(fc.tuple(fc.constantFrom(0, 0, 1, 5, 40), fact), { maxLength: 40 }).map((steps) => {
  let day = 0
  return steps.map(([step, of], place): StandingFact => {
    day += step
    return { id: `f${place}`, takenAt: instant(day * DAY), standsAs: 'as entered', fact: of }
  })
})
const rule: fc.Arbitrary<LeakRule> = fc.record({
  leakFrom: fc.constantFrom(null, ppmv(10_000)),
  reopensWithin: fc.constantFrom(0, 5, 30).map(days),
})

/** Told apart from the engine: how often each entry saw a leak. */
function leakingLooks(facts: readonly StandingFact[], { leakFrom }: LeakRule): string[] {
  const isLeak = (seen: LeakGrade | null) => seen === 'weep' || seen === 'drip' || seen === 'run'
  return facts.flatMap(({ id, fact: of }) => {
    const seen = 'leakBefore' in of ? [of.leakBefore, of.leakAfter] : 'leak' in of ? [of.leak] : []
    const byMeter = 'netScreening' in of && of.netScreening !== null && leakFrom !== null && of.netScreening >= leakFrom
    return seen.filter((each) => isLeak(each) || byMeter).map(() => id)
  })
}

describe('the leaks of any history', () => {
  it('hold every look that leaks, each in one leak, in order', () => {
    fc.assert(
      fc.property(history, rule, (facts, by) => {
        const found = leaksOf(facts, by).flatMap(({ looks }) => looks.filter((look) => look.leaks).map((look) => look.factId))
        expect(found).toEqual(leakingLooks(facts, by))
      }),
    )
  })

  it('do not overlap, and only the last may be open', () => {
    fc.assert(
      fc.property(history, rule, (facts, by) => {
        const leaks = leaksOf(facts, by)
        expect(new Set(leaks.map(({ id }) => id)).size).toBe(leaks.length)
        const times = leaks.flatMap(({ spells }) => spells.flatMap(({ from, to }) => [from, to ?? Infinity]))
        expect(times).toEqual(times.toSorted((one, other) => one - other))
        expect(leaks.slice(0, -1).every(({ state }) => state === 'verified')).toBe(true)
      }),
    )
  })

  it('say of themselves what agrees', () => {
    fc.assert(
      fc.property(history, rule, (facts, by) => {
        for (const leak of leaksOf(facts, by)) {
          const { looks, attempts, spells, verified, reopenedAt, state } = leak
          expect(looks[0]).toMatchObject({ factId: leak.id, at: leak.openedAt, leaks: true })
          expect(spells.map(({ from }) => from)).toEqual([leak.openedAt, ...reopenedAt])
          expect(spells.at(-1)?.to).toBe(verified?.at ?? null)
          expect(spells.slice(0, -1).every(({ to }) => to !== null)).toBe(true)
          expect(state === 'verified').toBe(verified !== null)
          if (verified) expect(looks.at(-1)).toMatchObject({ ...verified, leaks: false })
          if (state === 'attempted') expect(attempts.length).toBeGreaterThan(0)
          expect(leak.firstAttemptAt).toBe(attempts[0]?.at ?? null)
        }
      }),
    )
  })

  it('keep their names, whatever happens later', () => {
    fc.assert(
      fc.property(history, rule, fc.nat(40), (facts, by, until) => {
        const early = leaksOf(facts.slice(0, until), by).map(({ id }) => id)
        const late = leaksOf(facts, by).map(({ id }) => id)
        expect(late.slice(0, early.length)).toEqual(early)
      }),
    )
  })

  it('make days that add up, cut anywhere, and by the age of the packing', () => {
    const day = fc.integer({ min: -20, max: 400 }).map((count) => instant(count * DAY))
    fc.assert(
      fc.property(history, rule, day, day, day, (facts, by, ...cuts) => {
        const leaks = leaksOf(facts, by)
        const [from, middle, to] = cuts.toSorted((one, other) => one - other) as typeof cuts
        const over = (begin: typeof from, end: typeof to) => leakExposure({ facts, leaks, from: begin, to: end })
        const [whole, first, second] = [over(from, to), over(from, middle), over(middle, to)]
        for (const part of ['daysWatched', 'daysLeaking', 'daysDry', 'leaks', 'nips'] as const)
          expect(first[part] + second[part]).toBeCloseTo(whole[part], 9)
        expect(whole.daysDry).toBeGreaterThanOrEqual(0)
        const bands = exposureByAge({ facts, leaks, from, to })
        expect(bands.reduce((sum, band) => sum + band.days, 0)).toBeCloseTo(whole.daysWatched, 9)
        expect(bands.reduce((sum, band) => sum + band.leaks, 0)).toBe(whole.leaks)
      }),
    )
  })
})
