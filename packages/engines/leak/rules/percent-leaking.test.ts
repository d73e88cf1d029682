import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type MonitoredValve, percentLeaking, stepByPercent } from './percent-leaking.ts'

const atMostTwo = { percentAllowed: 2, leastValves: 0 }
const valves = (leaking: number, all: number, kind: MonitoredValve['kind'] = 'ordinary'): MonitoredValve[] =>
  Array.from({ length: all }, (_, index) => ({ id: `${kind} ${index}`, monitored: true, leaks: index < leaking, kind }))

type Rule = Parameters<typeof percentLeaking>[0]['rule']
function percent(given: readonly MonitoredValve[], rule: Rule = atMostTwo, difficultCounts = true) {
  const found = percentLeaking({ valves: given, rule, difficultCounts })
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

describe('percent leaking', () => {
  it('leaves out unsafe valves and what was not monitored, and counts difficult ones unless told not to', () => {
    const given = [
      ...valves(2, 10),
      ...valves(1, 4, 'difficult'),
      ...valves(3, 3, 'unsafe'),
      { id: 'x', monitored: false, leaks: true, kind: 'ordinary' as const },
    ]
    expect(percent(given)).toMatchObject({
      numerator: 3,
      denominator: 14,
      excluded: { unsafe: 3, difficult: 0, notMonitored: 1 },
    })
    expect(percent(given, atMostTwo, false)).toMatchObject({
      numerator: 2,
      denominator: 10,
      percent: 20,
      excluded: { unsafe: 3, difficult: 4, notMonitored: 1 },
    })
  })

  it('of no valves is not known, and not above', () => {
    expect(percent([])).toMatchObject({ percent: null, lower: null, upper: null, isAbove: false, denominator: 0 })
    expect(percent([], { percentAllowed: 0, leastValves: 0, percentItselfIsAbove: true }).isAbove).toBe(false)
  })

  it('2 of 100 is not above 2, but at least 2; 3 of 100 is above', () => {
    expect(percent(valves(2, 100)).isAbove).toBe(false)
    expect(percent(valves(2, 100), { ...atMostTwo, percentItselfIsAbove: true }).isAbove).toBe(true)
    expect(percent(valves(3, 100)).isAbove).toBe(true)
  })

  it('fewer valves than the least number are never too many', () => {
    expect(percent(valves(1, 10), { percentAllowed: 2, leastValves: 2 }).isAbove).toBe(false)
    expect(percent(valves(2, 10), { percentAllowed: 2, leastValves: 2 }).isAbove).toBe(true)
  })

  it('a rule without a percent has nothing above it', () => {
    expect(percent(valves(9, 10), { percentAllowed: null, leastValves: 0 }).isAbove).toBe(false)
  })

  it('a percent that is met exactly is not above, though it is no binary fraction', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 1, max: 40 }), (hundredths, times) => {
        const count = { numerator: hundredths * times, denominator: 10_000 * times }
        const rule = {
          everyDays: 28,
          leastValves: 0,
          byPercent: [{ atMostPercent: hundredths / 100, afterPeriods: 1, everyDays: 90 }],
        }
        expect(stepByPercent([count], rule)).toMatchObject({ everyDays: 90, cleanPeriods: 1 })
        expect(stepByPercent([{ ...count, numerator: count.numerator + 1 }], rule)).toMatchObject({ everyDays: 28 })
      }),
    )
  })

  it('refuses a valve that is counted twice, and a percent that is none', () => {
    const [valve] = valves(0, 1) as [MonitoredValve]
    expect(percentLeaking({ valves: [valve, valve], rule: atMostTwo })).toMatchObject({
      problem: { code: 'percent/valve-twice' },
    })
    expect(percentLeaking({ valves: [valve], rule: { percentAllowed: Number.NaN, leastValves: 0 } })).toMatchObject({
      problem: { code: 'rule/not-a-percent' },
    })
  })
})

describe('how often all are monitored', () => {
  const rule = {
    everyDays: 28,
    leastValves: 0,
    byPercent: [
      { atMostPercent: 2, afterPeriods: 2, everyDays: 181 },
      { atMostPercent: 2, afterPeriods: 5, everyDays: 365 },
    ],
  }
  const good = { numerator: 2, denominator: 100 }
  const bad = { numerator: 3, denominator: 100 }
  const skipped = { numerator: 0, denominator: 0 }

  it.each([
    ['nothing yet', [], 28, 0],
    ['one good period', [good], 28, 1],
    ['two', [good, good], 181, 2],
    ['four', [good, good, good, good], 181, 4],
    ['five', [good, good, good, good, good], 365, 5],
    ['five and then a bad one', [good, good, good, good, good, bad], 28, 0],
    ['a bad one and then two', [good, bad, good, good], 181, 2],
    ['two with a skipped one between', [good, skipped, good], 181, 2],
  ])('after %s', (_, history, everyDays, cleanPeriods) => {
    expect(stepByPercent(history, rule)).toEqual({ ok: true, everyDays, cleanPeriods })
  })

  it('a stricter step counts its own periods', () => {
    const steps = { ...rule, byPercent: [{ atMostPercent: 1, afterPeriods: 1, everyDays: 365 }, ...rule.byPercent] }
    expect(stepByPercent([good, good, good], steps)).toEqual({ ok: true, everyDays: 181, cleanPeriods: 3 })
    const otherWayRound = { ...steps, byPercent: steps.byPercent.toReversed() }
    expect(stepByPercent([good, good, good], otherWayRound)).toEqual({ ok: true, everyDays: 181, cleanPeriods: 3 })
    expect(stepByPercent([good, { numerator: 1, denominator: 100 }], steps)).toEqual({
      ok: true,
      everyDays: 365,
      cleanPeriods: 2,
    })
  })

  it('one leaking valve of few is no bad period where two are the least', () => {
    const one = { numerator: 1, denominator: 10 }
    expect(stepByPercent([one, one], { ...rule, leastValves: 2 })).toMatchObject({ everyDays: 181 })
    expect(stepByPercent([one, one], rule)).toMatchObject({ everyDays: 28 })
  })

  it('where the percent itself is above, two of a hundred are', () => {
    expect(stepByPercent([good, good], { ...rule, percentItselfIsAbove: true })).toMatchObject({ everyDays: 28, cleanPeriods: 0 })
  })

  it.each([
    { numerator: 2, denominator: 1 },
    { numerator: -1, denominator: 1 },
    { numerator: 0.5, denominator: 1 },
    { numerator: 0, denominator: Number.NaN },
    { numerator: 0, denominator: 1.5 },
  ])('refuses $numerator of $denominator', (count) => {
    expect(stepByPercent([count], rule)).toMatchObject({ ok: false, problem: { code: 'percent/not-a-count' } })
  })
})
