import { type Instant, instant } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { seededChance } from '../../schedule/seeded-chance.ts'
import type { Lifetime } from '../../stats/lifetime.ts'
import { comparePackings, type PackingGroup } from './compare.ts'
import { packingLives } from './lives.ts'

const ended = (...times: number[]): Lifetime[] => times.map((time) => ({ time, ended: true }))
const going = (...times: number[]): Lifetime[] => times.map((time) => ({ time, ended: false }))

function compare(groups: readonly PackingGroup[], weibull = true) {
  const found = comparePackings({ groups, confidence: 0.95, weibull })
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

describe('packings compared', () => {
  const graphite = { name: 'graphite braid', lives: [...ended(30, 36, 40, 44, 50, 55), ...going(60, 20)] }
  const ptfe = { name: 'PTFE braid', lives: [...ended(10, 14, 18, 22, 26, 30), ...going(12)] }
  const aramid = { name: 'aramid braid', lives: [...ended(3, 9), ...going(1, 2, 4, 5, 6, 7, 8, 10, 11, 12, 13, 14)] }

  it('each has its counts, its median, and those watched at round times of all', () => {
    const { groups } = compare([graphite, ptfe])
    expect(groups.map(({ name, lives, ended: worn, censored, longest }) => [name, lives, worn, censored, longest])).toEqual([
      ['graphite braid', 8, 6, 2, 60],
      ['PTFE braid', 7, 6, 1, 30],
    ])
    // 7 watched at 30: 6/7, 5/7, 4/7, 3/7: below one half at 44. 6/7, 5/7 · 4/5 · 3/4 … : 0.857, 0.686, 0.514, 0.343 at 22.
    expect(groups.map(({ median }) => median)).toEqual([44, 22])
    expect(groups[0]?.atRisk).toEqual(
      [0, 9, 18, 27, 36, 45, 54].map((time, place) => ({ time, lives: [8, 8, 8, 7, 6, 3, 2][place] })),
    )
    expect(groups[1]?.atRisk.map(({ lives }) => lives)).toEqual([7, 7, 4, 1, 0, 0, 0])
  })

  it('limits are on the log-log scale', () => {
    const [group] = compare([graphite]).groups
    const hazard = -Math.log(6 / 7)
    const reach = (1.959963984540054 * Math.sqrt(1 / 7 / 6)) / hazard
    const [first] = group?.steps.filter((step) => step.ended > 0) ?? []
    expect(first?.lower).toBeCloseTo(Math.exp(-hazard * Math.exp(reach)), 12)
  })

  it('a law with limits about it, or none where none was asked for', () => {
    const [group] = compare([graphite]).groups
    expect(group?.whyNoLaw).toBeNull()
    expect(group?.law?.shapeLower).toBeLessThan(group?.law?.shape ?? 0)
    expect(group?.law?.scaleUpper).toBeGreaterThan(group?.law?.scale ?? Infinity)
    expect(compare([graphite], false).groups[0]).toMatchObject({ law: null, whyNoLaw: null })
  })

  it('fewer than five ended are too few: shown, without a law, and not in the difference', () => {
    const found = compare([graphite, aramid, ptfe])
    expect(found.groups[1]).toMatchObject({ isTooFew: true, law: null, whyNoLaw: 'fewer than 5 have ended', ended: 2, lives: 14 })
    expect(found.difference?.between).toEqual(['graphite braid', 'PTFE braid'])
    expect(found.difference?.chiSquared).toBe(compare([graphite, ptfe]).difference?.chiSquared)
    expect(compare([{ name: 'five', lives: ended(1, 2, 3, 4, 5) }]).groups[0]?.isTooFew).toBe(false)
    expect(compare([{ name: 'four', lives: ended(1, 2, 3, 4) }]).groups[0]?.isTooFew).toBe(true)
  })

  it('with fewer than two to compare there is no difference, and it says why', () => {
    expect(compare([graphite, aramid])).toMatchObject({
      difference: null,
      whyNoDifference: 'fewer than two packings with 5 ended lives or more',
    })
    expect(compare([graphite, ptfe]).whyNoDifference).toBeNull()
  })

  it('a group that has no law says why, and one without lives is empty', () => {
    const found = compare([
      { name: 'all at once', lives: ended(9, 9, 9, 9, 9) },
      { name: 'none', lives: [] },
    ])
    expect(found.groups[0]).toMatchObject({ law: null, median: 9 })
    expect(found.groups[0]?.whyNoLaw).toContain('no shape fits best')
    expect(found.groups[1]).toMatchObject({ lives: 0, steps: [], median: null, longest: null, isTooFew: true })
  })

  it('groups that all ended at one time have no difference, and it says why', () => {
    const found = compare(['one', 'other'].map((name) => ({ name, lives: ended(9, 9, 9, 9, 9) })))
    expect(found.difference).toBeNull()
    expect(found.whyNoDifference).toContain('no life ended while two groups or more were watched')
  })
})

it.each<[string, readonly PackingGroup[], number, string]>([
  ['no groups', [], 0.95, 'packings/no-groups'],
  ['two of one name', [1, 2].map((time) => ({ name: 'a', lives: ended(time) })), 0.95, 'packings/name-twice'],
  ['a life that is no number', [{ name: 'a', lives: ended(Number.NaN) }], 0.95, 'lifetimes/not-a-time'],
  ['a life without end', [{ name: 'a', lives: ended(Infinity) }], 0.95, 'lifetimes/not-a-time'],
  ['95 for 0.95', [{ name: 'a', lives: ended(1) }], 95, 'confidence/not-a-share'],
])('refuses %s', (_, groups, confidence, code) => {
  expect(comparePackings({ groups, confidence, weibull: true })).toMatchObject({ ok: false, problem: { code } })
})

it('no figure is NaN or endless, whatever the lives', () => {
  const life = fc.record({ time: fc.oneof(fc.nat(9), fc.double({ min: 0, max: 1e300, noNaN: true })), ended: fc.boolean() })
  const groups = fc.array(fc.array(life, { maxLength: 12 }), { minLength: 1, maxLength: 4 })
  fc.assert(
    fc.property(groups, (given) => {
      const found = comparePackings({
        groups: given.map((lives, index) => ({ name: String(index), lives })),
        confidence: 0.95,
        weibull: true,
      })
      expect(numbersIn(found).filter((value) => !Number.isFinite(value))).toEqual([])
    }),
  )
})

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : []
}

it('20,000 lives in 12 groups are compared in less than 300 ms', () => {
  const chance = seededChance(7)
  const uniform = () => chance.below(1e6) / 1e6
  const day = (count: number): Instant => instant(count * 86_400_000)
  const groups = Array.from({ length: 12 }, (_, group) => {
    const recorded = Array.from({ length: 1667 }, () => {
      const worn = (900 + 90 * group) * (-Math.log(1 - uniform())) ** (1 / 1.8)
      const seen = 2400 * uniform()
      return {
        valveId: 'a',
        family: 'a',
        service: 'a',
        temperature: null,
        from: day(0),
        to: worn < seen ? day(worn) : null,
        endedBy: worn < seen ? ('worn out' as const) : null,
        lastSeen: day(seen),
      }
    })
    return { name: String(group), lives: packingLives(recorded).lives }
  })
  // Time of the processor, and the least of three: what else the machine does is not this engine's.
  const spent = [1, 2, 3].map(() => {
    const before = process.cpuUsage()
    expect(compare(groups).difference?.p).toBeLessThan(1e-9)
    const { user, system } = process.cpuUsage(before)
    return (user + system) / 1000
  })
  expect(Math.min(...spent)).toBeLessThan(300)
})
