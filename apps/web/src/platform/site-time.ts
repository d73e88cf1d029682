import { format, parseISO } from 'date-fns'

/** The calendar day and clock of the site at a moment, as a local Date for date-fns to format. */
export function atSite(moment: Date, timeZone: string): Date {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  }).formatToParts(moment)
  const figure = (type: Intl.DateTimeFormatPartTypes) => Number(parts.find((part) => part.type === type)?.value)
  return new Date(figure('year'), figure('month') - 1, figure('day'), figure('hour'), figure('minute'), figure('second'))
}

/** @example formatDay('2026-10-05') // → '5 Oct 2026' */
export function formatDay(isoDate: string): string {
  return format(parseISO(isoDate), 'd MMM yyyy')
}

/** @example formatMoment('2026-05-04T06:30:00Z', 'Europe/London') // → '4 May 2026, 07:30' */
export function formatMoment(isoMoment: string, timeZone: string): string {
  return format(atSite(parseISO(isoMoment), timeZone), 'd MMM yyyy, HH:mm')
}
