import { describe, expect, it } from 'vitest'
import { assessPlacement, type Assessment } from './assess.ts'
import type { RepackBoundary, RepackPlanInput, RepackSlot } from './input.ts'

const slot = (id: string, isOutage: boolean, day: number): RepackSlot => ({
  id,
  isOutage,
  day,
  hours: { fitting: 8, scaffolding: 0, isolating: 2 },
})
const boundary = (id: string, more: Partial<RepackBoundary> = {}): RepackBoundary => ({
  id,
  isolatesOnLine: true,
  hours: { fitting: 5, scaffolding: 0, isolating: 1 },
  uses: [{ itemId: 'cord 8', amount: 2 }],
  costs: [
    { chance: 1, leaks: 2, waste: 3, total: 6 },
    { chance: 4, leaks: 3, waste: 1, total: 8 },
  ],
  deferCost: { chance: 9, leaks: 4, waste: 0, total: 13 },
  pin: null,
  excluded: [],
  closedSlots: [],
  ...more,
})
const input: RepackPlanInput = {
  slots: [slot('week 2', false, 10), slot('summer', true, 60)],
  boundaries: [boundary('A'), boundary('B'), boundary('C', { isolatesOnLine: false })],
  stockLimits: [{ itemId: 'cord 8', beforeDay: 60, amount: 3 }],
}
const assessed = (placement: Readonly<Record<string, string | null>>, of: RepackPlanInput = input): Assessment => {
  const found = assessPlacement(of, new Map(Object.entries(placement)))
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

describe('a placement held against an input', () => {
  it('costs what its slots cost, part by part, and breaks nothing where it fits', () => {
    expect(assessed({ A: 'week 2', B: null, C: 'summer' })).toEqual({
      ok: true,
      cost: { chance: 14, leaks: 9, waste: 4, total: 27 },
      cannotBe: [],
      slots: [
        { slotId: 'week 2', used: { fitting: 5, scaffolding: 0, isolating: 1 } },
        { slotId: 'summer', used: { fitting: 5, scaffolding: 0, isolating: 1 } },
      ],
      overHours: [],
      stock: [{ itemId: 'cord 8', beforeDay: 60, used: 2, amount: 3 }],
      stockShort: [],
    })
  })

  it('names slots with too few hours, and stock that is short', () => {
    const { overHours, stockShort } = assessed({ A: 'week 2', B: 'week 2' })
    expect(overHours).toEqual([{ slotId: 'week 2', trade: 'fitting', used: 10, hours: 8 }])
    expect(stockShort).toEqual([{ itemId: 'cord 8', beforeDay: 60, used: 4, amount: 3 }])
  })

  it('lets wait what cannot be where it was put, and says why', () => {
    const closed = {
      ...input,
      boundaries: [boundary('A', { closedSlots: ['summer'] }), boundary('B'), boundary('C', { isolatesOnLine: false })],
    }
    const found = assessed({ A: 'summer', B: 'winter', C: 'week 2' }, closed)
    expect(found.cannotBe).toEqual([
      { boundaryId: 'A', slotId: 'summer', why: 'area not reached' },
      { boundaryId: 'B', slotId: 'winter', why: 'no such slot' },
      { boundaryId: 'C', slotId: 'week 2', why: 'no isolation on line' },
    ])
    expect([found.cost.total, found.slots[0]?.used.fitting]).toEqual([39, 0])
  })

  it('counts as waiting what it says nothing of', () => expect(assessed({}).cost.total).toBe(39))
})
