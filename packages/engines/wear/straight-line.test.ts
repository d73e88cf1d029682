import { instant, mm } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { runsOutOnStraightLine } from './straight-line.ts'

const level = (day: number, reserve: number) => ({ at: instant(day * 86_400_000), reserve: mm(reserve) })

describe('a straight line through the reserve', () => {
  it('from 9 mm falling 1 mm in 100 days, with 6 mm left, meets zero 600 days after the last level', () => {
    const result = runsOutOnStraightLine([level(0, 9), level(100, 8), level(200, 7), level(300, 6)])
    expect(result.ok && Math.round(result.runsOutAt / 86_400_000)).toBe(900)
    expect(result.ok && result.millimetresPerDay).toBeCloseTo(0.01, 12)
  })

  it.each([
    ['two levels', [level(0, 9), level(100, 8)], 'straight-line/too-few-levels'],
    ['three levels in one month', [level(0, 9), level(10, 8), level(29, 7)], 'straight-line/too-short'],
    ['a reserve that rises', [level(0, 6), level(50, 7), level(100, 8)], 'straight-line/not-falling'],
    ['a reserve that stays', [level(0, 6), level(50, 6), level(100, 6)], 'straight-line/not-falling'],
    ['nothing', [], 'straight-line/too-few-levels'],
  ])('is not drawn through %s', (_, levels, code) => {
    expect(runsOutOnStraightLine(levels)).toMatchObject({ ok: false, problem: { code } })
  })
})
