import { readFileSync } from 'node:fs'
import path from 'node:path'
import { exactShareLimits, wilsonShareLimits } from '@glandkeeper/engines/stats/binomial'
import { poissonLimits } from '@glandkeeper/engines/stats/poisson'
import { describe, expect, it } from 'vitest'

type Limits = readonly [lower: number, upper: number]

/** Each with its source and mark beside the values. */
const published = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/stats-limits.json'), 'utf8')) as {
  poisson95: Record<string, Limits | string>
  poissonTable: { rows: [events: number, lower: number, upper: number][] }
  shareLeaking: { found: number; lookedAt: number; share: number; exact: Limits; wilson: Limits }
  defectives: { found: number; lookedAt: number; exact: Limits }
}

describe('exact limits of a count, 95 %', () => {
  const counts = Object.entries(published.poisson95).flatMap(([events, limits]) =>
    typeof limits === 'string' ? [] : [{ events: Number(events), limits }],
  )

  it('there are four', () => expect(counts).toHaveLength(4))

  it.each(counts)('$events events: $limits', ({ events, limits: [lower, upper] }) => {
    const ours = poissonLimits({ events, exposure: 1, confidence: 0.95 })
    if (!ours.ok) throw new Error(ours.problem.detail)
    expect(ours.lower.toPrecision(7)).toBe(lower.toPrecision(7))
    expect(ours.upper.toPrecision(7)).toBe(upper.toPrecision(7))
  })

  it.each(published.poissonTable.rows)('%d events: %d to %d (from memory)', (events, lower, upper) => {
    const ours = poissonLimits({ events, exposure: 1, confidence: 0.95 })
    if (!ours.ok) throw new Error(ours.problem.detail)
    expect(Math.abs(ours.lower - lower)).toBeLessThanOrEqual(lower < 1 ? 0.0005 : 0.005)
    expect(Math.abs(ours.upper - upper)).toBeLessThanOrEqual(0.005)
  })
})

describe('limits of a share', () => {
  const perCent = (share: number) => (100 * share).toFixed(3)

  it('3 of 150 leaking, 95 %: exact 0.414 to 5.733, score 0.682 to 5.715 per cent', () => {
    const { found, lookedAt, share, exact, wilson } = published.shareLeaking
    const exactly = exactShareLimits({ found, lookedAt, confidence: 0.95 })
    const byScore = wilsonShareLimits({ found, lookedAt, confidence: 0.95 })
    if (!exactly.ok || !byScore.ok) throw new Error('refused')
    expect(exactly.share * 100).toBeCloseTo(share, 12)
    expect([perCent(exactly.lower), perCent(exactly.upper)]).toEqual(exact.map((limit) => limit.toFixed(3)))
    expect([perCent(byScore.lower), perCent(byScore.upper)]).toEqual(wilson.map((limit) => limit.toFixed(3)))
  })

  it('4 defectives of 20, 90 %: 0.071354 to 0.401029 (from memory; the handbook cuts off where we round, hence 1e-6)', () => {
    const { found, lookedAt, exact } = published.defectives
    const ours = exactShareLimits({ found, lookedAt, confidence: 0.9 })
    if (!ours.ok) throw new Error(ours.problem.detail)
    expect(Math.abs(ours.lower - exact[0])).toBeLessThan(1.1e-6)
    expect(Math.abs(ours.upper - exact[1])).toBeLessThan(1.1e-6)
  })
})
