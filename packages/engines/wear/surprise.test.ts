import { days, type Instant, instant, mm, mm2 } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { defaultPrior, type GroupPrior, type SquareMillimetrePerDay } from './prior.ts'
import { surpriseOf } from './surprise.ts'

const at = (day: number): Instant => instant(day * 86_400_000)
const life = { readings: [{ at: at(0), reserve: mm(10) }], nips: [], repackedAt: null, step: mm(0.875) }
const prior: GroupPrior = {
  ...defaultPrior,
  rate: { logRate: Math.log(0.01), logRateVariance: 1e-9, logRateMeanVariance: 0 },
  wear: {
    ...defaultPrior.wear,
    readingVariance: mm2(0.25),
    processVariance: 0.005 as SquareMillimetrePerDay,
    bedInDays: days(0),
    bedInFall: mm(0),
  },
}

describe('a new reading', () => {
  it('of 7 mm, 100 days after 10 mm at a known 0.01 mm a day: 9 expected, √(0.25 + 0.25 + 0.5) off, a score of -2', () => {
    const surprise = surpriseOf({ life, prior, earlierLives: [], reading: { at: at(100), reserve: mm(7) } })
    if (!surprise.ok) throw new Error(surprise.problem.detail)
    expect(surprise.expected).toBeCloseTo(9, 4)
    expect(surprise.deviation).toBeCloseTo(1, 6)
    expect(surprise.score).toBeCloseTo(-2, 4)
    expect(surprise.asksForSecondReading).toBe(false)
  })

  it('asks for a second one beyond three standard deviations, either way', () => {
    const asks = (reserve: number) =>
      surpriseOf({ life, prior, earlierLives: [], reading: { at: at(100), reserve: mm(reserve) } })
    expect(asks(5.9)).toMatchObject({ asksForSecondReading: true })
    expect(asks(12.1)).toMatchObject({ asksForSecondReading: true })
    expect(asks(11.9)).toMatchObject({ asksForSecondReading: false })
  })

  it.each([
    ['no reading before', { life: { ...life, readings: [] } }, 'forecast/no-reading'],
    ['a later one in the record', { reading: { at: at(-1), reserve: mm(9) } }, 'surprise/not-the-latest'],
    ['no date', { reading: { at: NaN as Instant, reserve: mm(9) } }, 'number/out-of-range'],
    ['a prior out of range', { prior: { ...prior, valveShare: 0.9 } }, 'forecast/unusable-prior'],
  ])('with %s is refused by name', (_, more, code) =>
    expect(surpriseOf({ life, prior, earlierLives: [], reading: { at: at(9), reserve: mm(9) }, ...more })).toMatchObject({
      ok: false,
      problem: { code },
    }),
  )

  it('is finite or a named problem for any number', () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), (when, reserve) => {
        const reading = { at: when as Instant, reserve: reserve as ReturnType<typeof mm> }
        const surprise = surpriseOf({ life, prior, earlierLives: [], reading })
        if (surprise.ok) expect(Number.isFinite(surprise.score)).toBe(true)
        else expect(surprise.problem.code).toMatch(/\//)
      }),
      { numRuns: 1000 },
    )
  })
})
