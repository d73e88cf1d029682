import { instant, mm } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { seriesOf } from './life.ts'
import { defaultPrior } from './prior.ts'
import { screened } from './screening.ts'

const DAY = 86_400_000
const lifeOf = (reserves: readonly number[], repackedAt: number | null = null) => ({
  readings: reserves.map((reserve, k) => ({ at: instant(k * 60 * DAY), reserve: mm(reserve) })),
  nips: [],
  repackedAt: repackedAt === null ? null : instant(repackedAt * DAY),
  step: mm(0.875),
})

function leftOutOf(life: ReturnType<typeof lifeOf>) {
  const series = seriesOf(life)
  if (!series.ok) throw new Error(series.problem.detail)
  return screened(defaultPrior.wear, series)
}

describe('gross errors', () => {
  it('a reading of 3.5 among 8, 7.5, 6.5, 6 is left out, being 3.5 mm below the 7 mm its neighbours make likely', () => {
    const { leftOut, reserves } = leftOutOf(lifeOf([8, 7.5, 3.5, 6.5, 6]))
    expect(leftOut).toHaveLength(1)
    expect(leftOut[0]).toMatchObject({ at: 120 * DAY, reserve: 3.5, why: 'far off its neighbours' })
    expect(leftOut[0]!.off).toBeCloseTo(-3.5, 9)
    expect(reserves).toEqual([8, 7.5, 6.5, 6])
  })

  it('two of them are left out in two passes', () =>
    expect(leftOutOf(lifeOf([10, 9.5, 15, 8.6, 8, 1, 7, 6.5])).leftOut.map(({ reserve }) => reserve)).toEqual([1, 15]))

  it.each([
    ['the first', [3, 7.5, 7, 6.5, 6]],
    ['the last', [8, 7.5, 7, 6.5, 1]],
    ['ordinary scatter', [8, 7.9, 7, 7.2, 6]],
    ['two readings', [8, 1]],
    ['none', []],
    ['all equal', [5, 5, 5, 5]],
  ])('%s are kept', (_, reserves) => expect(leftOutOf(lifeOf(reserves)).leftOut).toEqual([]))

  it('readings from before the repack are left out by that name', () => {
    const { leftOut, times } = leftOutOf(lifeOf([2, 1, 9, 8.5], 100))
    expect(leftOut.map(({ why }) => why)).toEqual(['before the repack', 'before the repack'])
    expect(times).toEqual([120 * DAY, 180 * DAY])
  })
})
