import type { PlanBlock, RoundPlan } from '@glandkeeper/contract/round-plans'
import { describe, expect, it } from 'vitest'
import { loadChart, weekAt } from './load-chart-geometry.ts'

const block = (areaCode: string, week: number, hours: number, crewId = 'A') =>
  ({ crewId, areaCode, week, visits: 1, hours }) as PlanBlock
const plan = {
  crews: [
    { crewId: 'A', hours: [10, 5, 10] },
    { crewId: 'B', hours: [10, 10, 10] },
  ],
  areas: [
    { areaCode: 'BH', setUpHours: 1 },
    { areaCode: 'TF', setUpHours: 1 },
  ],
  blocks: [block('TF', 0, 4), block('BH', 0, 2), block('BH', 1, 3, 'B')],
} as unknown as RoundPlan
const chart = (crewId: string | null) => loadChart({ plan, crewId, firstWeek: 0, weeks: 3, width: 348 })

describe('the chart of hours', () => {
  it('stacks areas in walking order from zero, each with its set-up', () => {
    const [below, above] = chart('A').bars
    expect([below?.block.areaCode, above?.block.areaCode]).toEqual(['BH', 'TF'])
    expect(below!.y + below!.height).toBeCloseTo(chart('A').base, 9)
    expect(above!.y + above!.height).toBeCloseTo(below!.y, 9)
    // Three hours and five on one scale.
    expect(above!.height / below!.height).toBeCloseTo(5 / 3, 9)
  })

  it('draws the hours of a crew, or of all together, to the scale of the bars', () => {
    expect(chart('A').weeks.map(({ load, hours }) => [load, hours])).toEqual([
      [8, 10],
      [0, 5],
      [0, 10],
    ])
    expect(chart(null).weeks.map(({ load, hours }) => [load, hours])).toEqual([
      [8, 20],
      [4, 15],
      [0, 20],
    ])
    expect(chart('A').capacity).toMatch(/^M40 [\d.]+H140L140 [\d.]+H240L240 [\d.]+H340$/)
    expect(chart('A').lines[0]).toEqual({ hours: 0, y: chart('A').base })
  })

  it('finds the week under a place, the nearest at its ends', () => {
    expect([-50, 41, 139, 141, 339, 900].map((x) => weekAt(chart('A'), x))).toEqual([0, 0, 0, 1, 2, 2])
  })
})
