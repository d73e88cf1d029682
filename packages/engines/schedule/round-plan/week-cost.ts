import type { PlanRules } from './input.ts'

export type LevelPrices = Pick<PlanRules, 'easyShare' | 'fullWeekPrice' | 'overtimePrice'>

/**
 * What a week costs beside the set-up of its areas: nothing while it is easy, a little while it is full, much beyond.
 *
 * @example costOfWeek(45, 40, { easyShare: 0.85, fullWeekPrice: 0.2, overtimePrice: 3 }) // → 16.2
 */
export function costOfWeek(load: number, hours: number, { easyShare, fullWeekPrice, overtimePrice }: LevelPrices): number {
  const overtime = Math.max(0, load - hours)
  const full = Math.max(0, Math.min(load, hours) - easyShare * hours)
  return overtimePrice * overtime + fullWeekPrice * full
}

/** All weeks of a crew together. */
export function costOfWeeks(
  load: Float64Array,
  hours: Float64Array,
  { easyShare, fullWeekPrice, overtimePrice }: LevelPrices,
): number {
  let sum = 0
  for (let week = 0; week < load.length; week += 1) {
    const there = load[week] as number
    const most = hours[week] as number
    const easy = easyShare * most
    if (there > most) sum += overtimePrice * (there - most) + fullWeekPrice * (most - easy)
    else if (there > easy) sum += fullWeekPrice * (there - easy)
  }
  return sum
}

/**
 * What one hour more is worth avoiding in a week, rising smoothly, so that weeks repel work before they are full.
 * The sixth power keeps it near the true price until the week is nearly at its hours.
 */
export function priceOfHour(load: number, hours: number, { easyShare, fullWeekPrice, overtimePrice }: LevelPrices): number {
  if (!(hours > 0)) return overtimePrice
  const share = load / hours
  if (share > 1) return overtimePrice
  if (share <= easyShare) return 0.05 * share
  return fullWeekPrice + (overtimePrice - fullWeekPrice) * ((share - easyShare) / (1 - easyShare)) ** 6
}
