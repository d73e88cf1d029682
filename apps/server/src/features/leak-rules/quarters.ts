/**
 * The quarter of the year a day falls in.
 *
 * @example quarterOf('2026-05-04') // → '2026 Q2'
 */
export function quarterOf(isoDay: string): string {
  return `${isoDay.slice(0, 4)} Q${Math.ceil(Number(isoDay.slice(5, 7)) / 3)}`
}

/** As long as percent leaking is looked back on: the quarter that runs, and those before. */
export const QUARTERS = 8

/**
 * So many quarters up to the one that runs, the oldest first.
 *
 * @example quartersUpTo('2026-02-04', 3) // → ['2025 Q3', '2025 Q4', '2026 Q1']
 */
export function quartersUpTo(today: string, quarters: number): string[] {
  const running = Number(today.slice(0, 4)) * 4 + Math.ceil(Number(today.slice(5, 7)) / 3) - 1
  return Array.from({ length: quarters }, (_, place) => {
    const quarter = running - quarters + 1 + place
    return `${Math.floor(quarter / 4)} Q${(quarter % 4) + 1}`
  })
}

/**
 * The first day of a quarter.
 *
 * @example firstDayOf('2025 Q4') // → '2025-10-01'
 */
export function firstDayOf(quarter: string): string {
  return `${quarter.slice(0, 4)}-${String(Number(quarter.slice(6)) * 3 - 2).padStart(2, '0')}-01`
}
