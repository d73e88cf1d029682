import type { Beat } from './beats.ts'
import type { PlanRules } from './input.ts'
import { costOfWeek } from './week-cost.ts'

/** The fewest weeks that serve every window of a beat, besides those that are open anyway: the classic sweep by last week. */
export function fewestOpenWeeks({ classes, allowed, isFixedOpen }: Beat): number {
  let count = 0
  let last = -1
  for (const { earliest, latest } of classes.toSorted((one, other) => one.latest - other.latest)) {
    if (earliest <= last) continue
    let isServed = false
    for (let week = earliest; week <= latest; week += 1) if (isFixedOpen[week] && allowed[week]) isServed = true
    if (isServed) continue
    last = latest
    count += 1
  }
  return count
}

/**
 * No plan of one crew costs less: each area opens in the fewest weeks that serve its windows, and all hours are spread
 * over the year as if they had no windows.
 */
export function lowerBound(beats: readonly Beat[], hours: readonly number[], rules: PlanRules, plannedHours: number): number {
  let setUp = 0
  for (const beat of beats) {
    const anyway = beat.isFixedOpen.reduce((sum, isOpen) => sum + isOpen, 0)
    setUp += beat.area.setUpHours * (anyway + fewestOpenWeeks(beat))
  }
  const year = hours.reduce((sum, own) => sum + own, 0)
  return setUp + costOfWeek(plannedHours + setUp, year, rules)
}
