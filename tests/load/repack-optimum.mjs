import { trades } from '../../packages/engines/dist/schedule/repack-plan/input.js'
import { solvedToTheEnd } from './plan-bound.mjs'

/** The least a plan of repacks can cost: everything said outright to the solver, and as long as it takes. */
export function leastRepackCost({ slots, boundaries, stockLimits }) {
  const cost = []
  const rows = new Map()
  const add = (row, upper, value) => {
    const { terms } = rows.get(row) ?? rows.set(row, { upper, terms: [] }).get(row)
    terms.push([cost.length - 1, value])
  }
  for (const { id, isolatesOnLine, hours, uses, costs, deferCost } of boundaries) {
    cost.push(deferCost.total)
    add(id, 1, 1)
    for (const [at, slot] of slots.entries()) {
      if (!isolatesOnLine && !slot.isOutage) continue
      cost.push(costs[at].total)
      add(id, 1, 1)
      for (const trade of trades) add(`${trade} in ${slot.id}`, slot.hours[trade], hours[trade])
      for (const { itemId, beforeDay, amount } of stockLimits) {
        const used = uses.reduce((sum, use) => (use.itemId === itemId ? sum + use.amount : sum), 0)
        if (slot.day < beforeDay && used > 0) add(`${itemId} before ${beforeDay}`, amount, used)
      }
    }
  }
  const ids = new Set(boundaries.map(({ id }) => id))
  return solvedToTheEnd({
    cost,
    rows: [...rows].map(([name, { upper, terms }]) => ({ lower: ids.has(name) ? 1 : -Infinity, upper, terms })),
  })
}
