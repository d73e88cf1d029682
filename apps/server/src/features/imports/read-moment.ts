import { TZDate } from '@date-fns/tz'

const ISO = /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{2}):(\d{2})(?::(\d{2})(\.\d+)?)?\s*(?:(Z)|([+-])(\d{2}):?(\d{2}))?)?$/

/** ISO 8601. A day without a time is taken as noon at the site, a time without an offset as the site's. */
export function momentOf(cell: string, timeZone: string): { readonly value: string } | { readonly fault: string } {
  const parts = ISO.exec(cell)
  if (!parts) return { fault: 'write the date as 2026-05-04, or 2026-05-04 14:30' }
  const [year, month, day, hour, minute, second] = [1, 2, 3, 4, 5, 6].map((at) => Number(parts[at] ?? (at === 4 ? 12 : 0))) as Six
  const milliseconds = Math.floor(Number(`0${parts[7] ?? ''}`) * 1000)
  const date = new Date(Date.UTC(year, month - 1, day))
  // 31 June rolls over to July, and 14:75 to 15:15; what was written is then not what would be kept.
  if (!isSame([year, month, day], [date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate()]))
    return { fault: 'no such date' }
  const plain = new Date(Date.UTC(year, month - 1, day, hour, minute, second, milliseconds))
  if (!isSame([hour, minute, second], [plain.getUTCHours(), plain.getUTCMinutes(), plain.getUTCSeconds()]))
    return { fault: 'no such time' }
  if (parts[8] === undefined && parts[9] === undefined)
    return atTheSite([year, month, day, hour, minute, second], milliseconds, timeZone)
  const [offsetHours, offsetMinutes] = [Number(parts[10] ?? 0), Number(parts[11] ?? 0)]
  if (offsetHours > 14 || offsetMinutes > 59) return { fault: 'no such time zone' }
  const ahead = (parts[9] === '-' ? -1 : 1) * (offsetHours * 60 + offsetMinutes)
  return { value: new Date(plain.getTime() - ahead * 60_000).toISOString() }
}

type Six = [number, number, number, number, number, number]

function atTheSite([year, month, day, hour, minute, second]: Six, milliseconds: number, timeZone: string) {
  const local = new TZDate(year, month - 1, day, hour, minute, second, milliseconds, timeZone)
  // When clocks go forward an hour is left out.
  if (!isSame([hour, minute], [local.getHours(), local.getMinutes()]))
    return { fault: 'no such time: the clocks at the site went forward' }
  return { value: new Date(local.getTime()).toISOString() }
}

function isSame(written: readonly number[], kept: readonly number[]): boolean {
  return written.every((part, at) => part === kept[at])
}
