import { type Outcome, refuse } from '../../outcome.ts'

/** Hours that a slot has and a boundary needs, by who works them. */
export type Trade = 'fitting' | 'scaffolding' | 'isolating'
export const trades: readonly Trade[] = ['fitting', 'scaffolding', 'isolating']

/** Days are counted from today. */
export interface RepackPlanInput {
  /** In order of day. */
  readonly slots: readonly RepackSlot[]
  readonly boundaries: readonly RepackBoundary[]
  readonly stockLimits: readonly StockLimit[]
}

/** A fortnight on line, or an outage. */
export interface RepackSlot {
  readonly id: string
  readonly isOutage: boolean
  /** Day of the work; of an uncertain outage the likely one. */
  readonly day: number
  readonly hours: Readonly<Record<Trade, number>>
}

/** Valves that are isolated together, and so repacked together. */
export interface RepackBoundary {
  readonly id: string
  /** It can be isolated while the plant runs; otherwise only in an outage. */
  readonly isolatesOnLine: boolean
  /** For all its valves. */
  readonly hours: Readonly<Record<Trade, number>>
  /** Cord and parts, for all its valves. */
  readonly uses: readonly { readonly itemId: string; readonly amount: number }[]
  /** One for each slot, in the same order. */
  readonly costs: readonly SlotCost[]
  /** Of being repacked in none of them. */
  readonly deferCost: SlotCost
  /** A planner's word that it is done in a slot. */
  readonly pin: { readonly slotId: string } | null
  /** Slots a planner has ruled out. */
  readonly excluded: readonly string[]
  /** Outages that do not reach its area. */
  readonly closedSlots: readonly string[]
}

/** What a slot costs a boundary, all in one unit: money or points. */
export interface SlotCost {
  /** Chance of running out before, by what running out costs. */
  readonly chance: number
  /** Leaks to be expected before, by what a leak costs. */
  readonly leaks: number
  /** Packing life that is thrown away. */
  readonly waste: number
  readonly total: number
}

/** All slots before a day together use no more of an item than there is by then. */
export interface StockLimit {
  readonly itemId: string
  readonly beforeDay: number
  /** In stock now, and what arrives before that day. */
  readonly amount: number
}

/** The first fault of an input, by name; null when there is none. */
export function faultOfInput(input: RepackPlanInput): (Outcome<object> & { ok: false }) | null {
  return faultOfSlots(input) ?? faultOfStock(input) ?? faultOfBoundaries(input)
}

function faultOfSlots({ slots }: RepackPlanInput): (Outcome<object> & { ok: false }) | null {
  const known = new Set<string>()
  let last = -Infinity
  for (const { id, day, hours } of slots) {
    if (known.has(id)) return refuse('repacks/twice', id, `two slots are called ${id}`)
    known.add(id)
    if (!Number.isFinite(day)) return refuse('repacks/slot-day', id, `the day of a slot is a number, not ${day}`)
    if (day < last) return refuse('repacks/slot-order', id, 'slots stand in order of day')
    last = day
    if (!areHours(hours)) return refuse('repacks/slot-hours', id, 'a slot has 0 hours or more of each trade')
  }
  return null
}

function faultOfStock({ stockLimits }: RepackPlanInput): (Outcome<object> & { ok: false }) | null {
  for (const { itemId, beforeDay, amount } of stockLimits)
    if (Number.isNaN(beforeDay) || !isAmount(amount))
      return refuse('repacks/stock', itemId, 'a limit of stock has a day and an amount of 0 or more')
  return null
}

function faultOfBoundaries({ slots, boundaries }: RepackPlanInput): (Outcome<object> & { ok: false }) | null {
  const slotIds = new Set(slots.map(({ id }) => id))
  const known = new Set<string>()
  for (const { id, hours, uses, costs, deferCost, excluded, closedSlots } of boundaries) {
    if (known.has(id)) return refuse('repacks/twice', id, `two boundaries are called ${id}`)
    known.add(id)
    if (!areHours(hours)) return refuse('repacks/boundary-hours', id, 'a boundary needs 0 hours or more of each trade')
    if (!uses.every(({ amount }) => isAmount(amount))) return refuse('repacks/uses', id, 'a boundary uses amounts of 0 or more')
    if (costs.length !== slots.length)
      return refuse('repacks/costs', id, `${costs.length} costs are given for ${slots.length} slots`)
    if (![...costs, deferCost].every(isCost)) return refuse('repacks/costs', id, 'each part of a cost is 0 or more')
    const unknown = [...excluded, ...closedSlots].find((slotId) => !slotIds.has(slotId))
    if (unknown !== undefined) return refuse('repacks/slot-unknown', id, `no slot is called ${unknown}`)
  }
  return null
}

const isAmount = (value: number) => value >= 0 && value < Infinity
const areHours = (hours: Readonly<Record<Trade, number>>) => trades.every((trade) => isAmount(hours[trade]))
const isCost = ({ chance, leaks, waste, total }: SlotCost) => [chance, leaks, waste, total].every(isAmount)
