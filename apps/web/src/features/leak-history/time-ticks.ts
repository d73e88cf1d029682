import { atSite } from '../../platform/site-time.ts'

const NAMES = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']
/** Steps of a calendar, in months, the finest first. */
const STEPS = [1, 2, 3, 6, 12, 24, 60, 120, 240, 600] as const

/** First days of months of the site's calendar between two moments, so many at most; a January is named by its year. */
export function timeTicks(from: Date, to: Date, most: number, timeZone: string): { at: string; label: string }[] {
  const first = monthOf(from, timeZone) + 1
  const last = monthOf(to, timeZone)
  const step = STEPS.find((months) => Math.floor((last - first) / months) + 1 <= most) ?? 1200
  return Array.from({ length: Math.max(last - first + 1, 0) }, (_, place) => first + place)
    .filter((month) => month % step === 0)
    .map((month) => ({ at: startOf(month, timeZone).toISOString(), label: labelOf(month) }))
}

/** Months since the year 0. */
function monthOf(moment: Date, timeZone: string): number {
  const day = atSite(moment, timeZone)
  return day.getFullYear() * 12 + day.getMonth()
}

function startOf(month: number, timeZone: string): Date {
  const wanted = Date.UTC(Math.floor(month / 12), month % 12, 1)
  const shown = atSite(new Date(wanted), timeZone)
  const ahead = Date.UTC(shown.getFullYear(), shown.getMonth(), shown.getDate(), shown.getHours(), shown.getMinutes()) - wanted
  return new Date(wanted - ahead)
}

function labelOf(month: number): string {
  return month % 12 === 0 ? String(month / 12) : (NAMES[month % 12] ?? '')
}
