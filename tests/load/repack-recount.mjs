import { trades } from '../../packages/engines/dist/schedule/repack-plan/input.js'

const OFF_BY = 1e-6

/** Counts a plan of repacks anew from its input alone, so that the engine does not vouch for itself. */
export function recountRepacks({ slots, boundaries, stockLimits }, plan) {
  const slotOf = new Map(plan.placed.map(({ boundaryId, slotId }) => [boundaryId, slotId]))
  const slotAt = new Map(slots.map(({ id }, at) => [id, at]))
  const faults = []
  if (slotOf.size !== plan.placed.length || slotOf.size !== boundaries.length)
    faults.push('boundaries are missing or placed twice')
  const hours = slots.map(() => Object.fromEntries(trades.map((trade) => [trade, 0])))
  const stock = stockLimits.map(() => 0)
  let cost = 0
  let waiting = 0
  for (const boundary of boundaries) {
    const slotId = slotOf.get(boundary.id)
    if (slotId === null) {
      cost += boundary.deferCost.total
      waiting += 1
      continue
    }
    const at = slotAt.get(slotId)
    cost += boundary.costs[at].total
    if (!boundary.isolatesOnLine && !slots[at].isOutage) faults.push(`${boundary.id} cannot be isolated in ${slotId}`)
    for (const trade of trades) hours[at][trade] += boundary.hours[trade]
    for (const [limit, { itemId, beforeDay }] of stockLimits.entries())
      if (slots[at].day < beforeDay)
        stock[limit] += boundary.uses.reduce((sum, use) => (use.itemId === itemId ? sum + use.amount : sum), 0)
  }
  for (const [at, slot] of slots.entries())
    for (const trade of trades)
      if (hours[at][trade] > slot.hours[trade] + OFF_BY) faults.push(`${slot.id} has too few hours of ${trade}`)
  for (const [limit, { itemId, amount }] of stockLimits.entries())
    if (stock[limit] > amount + OFF_BY) faults.push(`there is too little ${itemId}`)
  return { cost, waiting, faults }
}
