import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assessPlacement } from './assess.ts'
import type { RepackPlanInput, SlotCost } from './input.ts'
import { planRepacks, type RepackPlan } from './plan.ts'

const cost = (total: number): SlotCost => ({ chance: total, leaks: 0, waste: 0, total })
const limits = { solve: null, seconds: 0, relativeGap: 0 }
const amounts = fc.constantFrom(0, 1, 2, 4.5)
const someHours = (hours: fc.Arbitrary<number>) => fc.record({ fitting: hours, scaffolding: hours, isolating: hours })
const nowAndThen = fc.oneof({ weight: 4, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: fc.nat(5) })
const someInput = fc
  .record({
    slots: fc.array(fc.record({ isOutage: fc.boolean(), days: fc.nat(20), hours: someHours(fc.constantFrom(0, 2, 4.5, 9)) }), {
      maxLength: 5,
    }),
    boundaries: fc.array(
      fc.record({
        isolatesOnLine: fc.boolean(),
        hours: someHours(amounts),
        uses: fc.array(fc.record({ itemId: fc.constantFrom('cord', 'bush'), amount: amounts }), { maxLength: 2 }),
        costs: fc.array(fc.nat(20), { minLength: 6, maxLength: 6 }),
        pin: nowAndThen,
        excluded: nowAndThen,
        closed: nowAndThen,
      }),
      { maxLength: 12 },
    ),
    stockLimits: fc.array(fc.record({ itemId: fc.constantFrom('cord', 'bush'), beforeDay: fc.nat(60), amount: fc.nat(6) }), {
      maxLength: 4,
    }),
  })
  .map(({ slots: given, boundaries, stockLimits }): RepackPlanInput => {
    let day = 0
    const inOrder = given.map(({ isOutage, days, hours }, slot) => ({ id: `slot ${slot}`, isOutage, day: (day += days), hours }))
    const named = (slot: number | null) => (slot !== null && slot < inOrder.length ? [`slot ${slot}`] : [])
    return {
      slots: inOrder,
      stockLimits,
      boundaries: boundaries.map(({ costs, pin, excluded, closed, ...boundary }, index) => ({
        id: `boundary ${index}`,
        ...boundary,
        costs: inOrder.map((_, slot) => cost(costs[slot]!)),
        deferCost: cost(5 + costs[5]!),
        pin: pin === null ? null : { slotId: `slot ${pin}` },
        excluded: named(excluded),
        closedSlots: named(closed),
      })),
    }
  })

describe('every plan', () => {
  it('has each boundary once, within hours and stock and where it may be, keeps or names pins, and adds up', () => {
    fc.assert(
      fc.property(someInput, (input) => {
        const plan = planRepacks(input, limits)
        if (!plan.ok) throw new Error(plan.problem.detail)
        expect(plan.placed.map(({ boundaryId }) => boundaryId)).toEqual(input.boundaries.map(({ id }) => id))
        expectWithin(input, plan)
        for (const [at, { id, pin }] of input.boundaries.entries()) {
          const { slotId, reason, runnerUp, cost: own } = plan.placed[at]!
          const isNamed = plan.infeasiblePins.some(({ boundaryId }) => boundaryId === id)
          if (pin) expect([slotId, reason]).toEqual(isNamed ? [null, 'pin cannot be kept'] : [pin.slotId, 'pinned'])
          else expect([isNamed, runnerUp === null || runnerUp.extraCost >= 0]).toEqual([false, true])
          expect(own).toEqual(costsOf(input, at).get(slotId))
        }
        expect(plan.cost).toBeCloseTo(
          plan.placed.reduce((sum, { cost: { total } }) => sum + total, 0),
          9,
        )
        expect(plan.bound).toBeLessThanOrEqual(plan.cost)
        expect(plan.gap).toBeGreaterThanOrEqual(0)
        expect(plan.greedyCost).toBeGreaterThanOrEqual(plan.cost - 1e-9)
        expect(planRepacks(input, limits)).toEqual(plan)
      }),
      { numRuns: 300 },
    )
  }, 60_000)

  it('is found whole and without a fault when it is held against its own input', () => {
    fc.assert(
      fc.property(someInput, (input) => {
        const plan = planRepacks(input, limits)
        if (!plan.ok) throw new Error(plan.problem.detail)
        const assessed = assessPlacement(input, new Map(plan.placed.map(({ boundaryId, slotId }) => [boundaryId, slotId])))
        expect(assessed).toMatchObject({
          ok: true,
          cannotBe: [],
          overHours: [],
          stockShort: [],
          slots: plan.slots,
          stock: plan.stock,
        })
        if (assessed.ok) expect(assessed.cost.total).toBeCloseTo(plan.cost, 9)
      }),
    )
  })
})

function costsOf({ slots: own, boundaries }: RepackPlanInput, at: number): Map<string | null, SlotCost> {
  const { costs, deferCost } = boundaries[at]!
  return new Map([[null, deferCost], ...own.map(({ id }, slot) => [id, costs[slot]!] as const)])
}

/** Hours and stock counted anew from the boundaries alone, and where each may be. */
function expectWithin({ slots: own, boundaries, stockLimits }: RepackPlanInput, plan: RepackPlan) {
  const inSlot = (id: string) => boundaries.filter((_, at) => plan.placed[at]!.slotId === id)
  for (const [at, { id, isOutage, hours }] of own.entries()) {
    for (const trade of ['fitting', 'scaffolding', 'isolating'] as const) {
      const used = inSlot(id).reduce((sum, each) => sum + each.hours[trade], 0)
      expect(plan.slots[at]!.used[trade]).toBeCloseTo(used, 9)
      expect(used).toBeLessThanOrEqual(hours[trade] + 1e-6)
    }
    for (const each of inSlot(id)) {
      expect(each.isolatesOnLine || isOutage).toBe(true)
      expect([...each.excluded, ...each.closedSlots]).not.toContain(id)
    }
  }
  for (const { itemId, beforeDay, amount } of stockLimits) {
    const early = own.filter(({ day }) => day < beforeDay).flatMap(({ id }) => inSlot(id))
    const used = early.flatMap(({ uses }) => uses).reduce((sum, use) => (use.itemId === itemId ? sum + use.amount : sum), 0)
    expect(used).toBeLessThanOrEqual(amount + 1e-6)
  }
}
