import { TZDate } from '@date-fns/tz'
import { format } from 'date-fns'

/** The only source of the present time. Tests pass their own. */
export type Clock = () => Date

export const systemClock: Clock = () => new Date()

/** The day of a site on which a moment falls: `2026-05-04`. */
export function dayAt(moment: Date | number, timeZone: string): string {
  return format(new TZDate(Number(moment), timeZone), 'yyyy-MM-dd')
}
