import { describe, expect, it } from 'vitest'
import { assessPlacement } from './assess.ts'
import type { RepackBoundary, RepackPlanInput, RepackSlot, SlotCost } from './input.ts'
import { planRepacks, type RepackPlan } from './plan.ts'

const cost = (total: number): SlotCost => ({ chance: total, leaks: 0, waste: 0, total })
const aSlot = (slot: Partial<RepackSlot> = {}): RepackSlot => ({
  id: 'week 2',
  isOutage: false,
  day: 10,
  hours: { fitting: 8, scaffolding: 8, isolating: 8 },
  ...slot,
})
const slots = [aSlot(), aSlot({ id: 'week 4', day: 24 }), aSlot({ id: 'summer', day: 60, isOutage: true })]
/** Costs by slot, then of waiting. */
const aBoundary = (id: string, costs: readonly number[], boundary: Partial<RepackBoundary> = {}): RepackBoundary => ({
  id,
  isolatesOnLine: true,
  hours: { fitting: 5, scaffolding: 0, isolating: 1 },
  uses: [],
  costs: costs.slice(0, -1).map(cost),
  deferCost: cost(costs.at(-1) ?? 0),
  pin: null,
  excluded: [],
  closedSlots: [],
  ...boundary,
})
const anInput = (boundaries: readonly RepackBoundary[], input: Partial<RepackPlanInput> = {}): RepackPlanInput => ({
  slots,
  boundaries,
  stockLimits: [],
  ...input,
})
const limits = { solve: null, seconds: 0, relativeGap: 0 }
const planOf = (...[boundaries, input]: Parameters<typeof anInput>): RepackPlan => {
  const plan = planRepacks(anInput(boundaries, input), limits)
  if (!plan.ok) throw new Error(plan.problem.detail)
  return plan
}
const shown = (plan: RepackPlan) =>
  plan.placed.map(({ boundaryId, slotId, reason, blockedBy }) => [boundaryId, slotId, reason, blockedBy])

describe('a plan of repacks', () => {
  it('puts each boundary where it costs least, and says what the next best would cost more', () => {
    const plan = planOf([aBoundary('A', [3, 4, 7, 9]), aBoundary('B', [8, 2, 6, 9])])
    expect(shown(plan)).toEqual([
      ['A', 'week 2', 'costs least of all its slots', null],
      ['B', 'week 4', 'costs least of all its slots', null],
    ])
    // Week 4 has three hours left, A needs five: the summer is its next best.
    expect(plan.placed.map(({ runnerUp }) => runnerUp)).toEqual([
      { slotId: 'summer', extraCost: 4 },
      { slotId: 'summer', extraCost: 4 },
    ])
    expect([plan.cost, plan.bound, plan.gap, plan.greedyCost]).toEqual([5, 5, 0, 5])
    expect(plan.slots[0]).toEqual({ slotId: 'week 2', used: { fitting: 5, scaffolding: 0, isolating: 1 } })
  })

  it('lets who loses least go elsewhere where two want the same hours, and names the trade that is short', () => {
    const plan = planOf([aBoundary('A', [3, 4, 7, 9]), aBoundary('B', [1, 8, 8, 9])])
    expect(shown(plan)).toEqual([
      ['A', 'week 4', 'a cheaper slot has no hours left', 'fitting'],
      ['B', 'week 2', 'costs least of all its slots', null],
    ])
    const scaffolded = { hours: { fitting: 1, scaffolding: 5, isolating: 1 } }
    expect(shown(planOf([aBoundary('A', [3, 4, 7, 9], scaffolded), aBoundary('B', [1, 8, 8, 9], scaffolded)]))[0]).toEqual([
      'A',
      'week 4',
      'a cheaper slot has no hours left',
      'scaffolding',
    ])
  })

  it('keeps what only an outage isolates out of all other slots', () => {
    const plan = planOf([
      aBoundary('A', [1, 2, 5, 9], { isolatesOnLine: false }),
      aBoundary('B', [1, 2, 9.5, 9], { isolatesOnLine: false }),
    ])
    expect(shown(plan)).toEqual([
      ['A', 'summer', 'only an outage isolates it', null],
      ['B', null, 'no slot is open to it', null],
    ])
  })

  it('keeps out of slots that are ruled out, and of outages that do not reach the area', () => {
    const plan = planOf([
      aBoundary('A', [1, 2, 5, 9], { excluded: ['week 2'] }),
      aBoundary('B', [6, 7, 2, 9], { closedSlots: ['summer'] }),
    ])
    expect(shown(plan)).toEqual([
      ['A', 'week 4', 'a cheaper slot is closed to it', null],
      ['B', 'week 2', 'a cheaper slot is closed to it', null],
    ])
  })

  it('waits where that costs least', () => {
    const plan = planOf([aBoundary('A', [5, 4, 3, 2])])
    expect(shown(plan)).toEqual([['A', null, 'waits: repacking now would waste more', null]])
    expect(plan.placed[0]?.runnerUp).toEqual({ slotId: 'summer', extraCost: 1 })
  })

  it('lets wait what no slot has room for', () => {
    const plan = planOf([aBoundary('A', [5, 4, 3, 20], { hours: { fitting: 9, scaffolding: 0, isolating: 0 } })])
    expect(shown(plan)).toEqual([['A', null, 'no slot has room', 'fitting']])
    expect(plan.placed[0]?.runnerUp).toBeNull()
  })

  it('takes no more cord before a day than there is by then, whichever slots it goes to', () => {
    const small = { hours: { fitting: 1, scaffolding: 0, isolating: 1 }, uses: [{ itemId: 'cord 8', amount: 3 }] }
    const stockLimits = [
      { itemId: 'cord 8', beforeDay: 20, amount: 4 },
      { itemId: 'cord 8', beforeDay: 50, amount: 7 },
      { itemId: 'cord 6', beforeDay: 50, amount: 0 },
    ]
    const plan = planOf(
      [aBoundary('A', [1, 2, 3, 9], small), aBoundary('B', [1, 4, 8, 9], small), aBoundary('C', [1, 5, 8, 9], small)],
      { stockLimits },
    )
    expect(shown(plan)).toEqual([
      ['A', 'summer', 'cord or parts come later', 'cord 8'],
      ['B', 'week 4', 'cord or parts come later', 'cord 8'],
      ['C', 'week 2', 'costs least of all its slots', null],
    ])
    expect(plan.stock).toEqual([
      { itemId: 'cord 8', beforeDay: 20, used: 3, amount: 4 },
      { itemId: 'cord 8', beforeDay: 50, used: 6, amount: 7 },
      { itemId: 'cord 6', beforeDay: 50, used: 0, amount: 0 },
    ])
  })

  it('adds up what two valves of a boundary take of the same cord', () => {
    const uses = [
      { itemId: 'cord 8', amount: 1 },
      { itemId: 'cord 8', amount: 2 },
    ]
    const plan = planOf([aBoundary('A', [1, 2, 3, 9], { uses })], {
      stockLimits: [{ itemId: 'cord 8', beforeDay: 50, amount: 2.5 }],
    })
    expect(shown(plan)).toEqual([['A', 'summer', 'cord or parts come later', 'cord 8']])
  })

  it('holds a slot to the day before a delivery, not to the day itself', () => {
    const uses = [{ itemId: 'cord 8', amount: 1 }]
    const plan = planOf([aBoundary('A', [1, 2, 3, 9], { uses })], {
      stockLimits: [{ itemId: 'cord 8', beforeDay: 10, amount: 0 }],
    })
    expect(plan.placed[0]?.slotId).toBe('week 2')
  })

  it('costs nothing where there is nothing to plan', () => {
    expect(planOf([])).toMatchObject({ placed: [], cost: 0, bound: 0, gap: 0, greedyCost: 0, isCutShort: false })
  })
})

describe('a pin', () => {
  it('is kept, whatever it costs, and shows that', () => {
    const plan = planOf([aBoundary('A', [3, 4, 7, 9], { pin: { slotId: 'week 4' } }), aBoundary('B', [8, 2, 6, 9])])
    expect(shown(plan)).toEqual([
      ['A', 'week 4', 'pinned', null],
      ['B', 'summer', 'a cheaper slot has no hours left', 'fitting'],
    ])
    expect(plan.placed[0]?.runnerUp).toEqual({ slotId: 'week 2', extraCost: -1 })
    expect([plan.cost, plan.bound, plan.infeasiblePins]).toEqual([10, 10, []])
  })

  it.each([
    ['to a slot there is not', { pin: { slotId: 'winter' } }, 'There is no such slot.'],
    [
      'out of all outages',
      { pin: { slotId: 'week 2' }, isolatesOnLine: false },
      'It cannot be isolated on line, and this slot is no outage.',
    ],
    ['to a slot that is ruled out', { pin: { slotId: 'week 2' }, excluded: ['week 2'] }, 'This slot is ruled out for it.'],
    ['to an outage elsewhere', { pin: { slotId: 'summer' }, closedSlots: ['summer'] }, 'This outage does not reach its area.'],
    [
      'beyond the hours',
      { pin: { slotId: 'week 2' }, hours: { fitting: 8.1, scaffolding: 0, isolating: 0 } },
      'The slot has too few hours of fitting for all that is pinned to it.',
    ],
    [
      'beyond the stock',
      { pin: { slotId: 'week 2' }, uses: [{ itemId: 'cord 8', amount: 5 }] },
      'There is too little cord 8 by then for all that is pinned.',
    ],
  ] as const)('is named with the reason when it is set %s, and waits', (_, boundary, why) => {
    const plan = planOf([aBoundary('A', [1, 2, 3, 9], boundary)], {
      stockLimits: [{ itemId: 'cord 8', beforeDay: 20, amount: 4 }],
    })
    expect(plan.infeasiblePins).toEqual([{ boundaryId: 'A', slotId: boundary.pin.slotId, why }])
    expect(shown(plan)).toEqual([['A', null, 'pin cannot be kept', null]])
    expect(plan.cost).toBe(9)
  })

  it('of two that do not fit together is kept for who loses more by waiting', () => {
    const pin = { pin: { slotId: 'week 2' } }
    const plan = planOf([aBoundary('A', [1, 2, 3, 9], pin), aBoundary('B', [1, 2, 3, 12], pin)])
    expect(plan.placed.map(({ slotId }) => slotId)).toEqual([null, 'week 2'])
    expect(plan.infeasiblePins.map(({ boundaryId }) => boundaryId)).toEqual(['A'])
  })
})

describe('what is no input', () => {
  const A = aBoundary('A', [1, 2, 3, 9])
  it.each([
    ['two slots of one name', anInput([], { slots: [aSlot(), aSlot()] }), 'repacks/twice'],
    ['a day that is none', anInput([], { slots: [aSlot({ day: NaN })] }), 'repacks/slot-day'],
    ['slots out of order', anInput([], { slots: slots.toReversed() }), 'repacks/slot-order'],
    [
      'hours below 0',
      anInput([], { slots: [aSlot({ hours: { fitting: -1, scaffolding: 0, isolating: 0 } })] }),
      'repacks/slot-hours',
    ],
    ['stock that is none', anInput([], { stockLimits: [{ itemId: 'cord', beforeDay: 3, amount: NaN }] }), 'repacks/stock'],
    [
      'a day of stock that is none',
      anInput([], { stockLimits: [{ itemId: 'cord', beforeDay: NaN, amount: 1 }] }),
      'repacks/stock',
    ],
    ['two boundaries of one name', anInput([A, A]), 'repacks/twice'],
    ['work that is none', anInput([{ ...A, hours: { fitting: NaN, scaffolding: 0, isolating: 0 } }]), 'repacks/boundary-hours'],
    ['an amount below 0', anInput([{ ...A, uses: [{ itemId: 'cord', amount: -1 }] }]), 'repacks/uses'],
    ['costs of another number of slots', anInput([aBoundary('A', [1, 2, 9])]), 'repacks/costs'],
    ['a cost that is none', anInput([aBoundary('A', [1, NaN, 2, 9])]), 'repacks/costs'],
    ['a cost of waiting below 0', anInput([aBoundary('A', [1, 2, 3, -9])]), 'repacks/costs'],
    ['a slot unknown', anInput([{ ...A, excluded: ['winter'] }]), 'repacks/slot-unknown'],
    ['an outage unknown', anInput([{ ...A, closedSlots: ['winter'] }]), 'repacks/slot-unknown'],
  ])('is refused by name: %s', (_, input, code) => {
    const plan = planRepacks(input, limits)
    expect(plan.ok ? 'planned' : plan.problem.code).toBe(code)
    expect(assessPlacement(input, new Map()).ok).toBe(false)
  })

  it('is a search without end', () => {
    const plan = planRepacks(anInput([A]), { ...limits, seconds: NaN })
    expect(plan.ok ? 'planned' : plan.problem.code).toBe('repacks/limits')
  })
})
