import { format, subMonths } from 'date-fns'

/** As many as have a bar. */
const MONTHS = 25

/** The months of the bars, the newest first, and one that is chosen though it is older. */
export function monthsBack(today: Date, chosen?: string): string[] {
  const months = Array.from({ length: MONTHS }, (_, back) => format(subMonths(today, back), 'yyyy-MM'))
  return chosen === undefined || months.includes(chosen) ? months : [...months, chosen]
}
