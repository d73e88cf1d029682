import { ChangeSubject } from '@glandkeeper/contract/log'
import { z } from 'zod'

/** Changes on one page of the log. */
export const PAGE = 50
const MOST_LETTERS = 60

/** What of the log is looked at: kept in its address, so that it can be sent to somebody. */
export interface LogView {
  readonly subject: ChangeSubject | null
  readonly person: string | null
  readonly from: string
  readonly to: string
  readonly find: string
  readonly skip: number
}

/** What is no filter is left out, not an error: addresses are typed and shortened by hand. */
export function logViewOf(address: URLSearchParams): LogView {
  const skip = address.get('skip') ?? ''
  return {
    subject: ChangeSubject.safeParse(address.get('subject')).data ?? null,
    person: z.uuid().safeParse(address.get('person')).data ?? null,
    from: dayIn(address.get('from')),
    to: dayIn(address.get('to')),
    find: (address.get('find') ?? '').trim().slice(0, MOST_LETTERS),
    skip: /^\d{1,7}$/.test(skip) ? Number(skip) : 0,
  }
}

function dayIn(text: string | null): string {
  return z.iso.date().safeParse(text).data ?? ''
}

/**
 * The address of a view with something changed. With another filter the list begins anew.
 *
 * @example withLogView(logViewOf(new URLSearchParams('find=nose&skip=50')), { subject: 'valve' }) // → '?subject=valve&find=nose'
 */
export function withLogView(view: LogView, change: Partial<LogView>): string {
  const { subject, person, from, to, find, skip } = { ...view, skip: 0, ...change }
  const address = new URLSearchParams()
  if (subject !== null) address.set('subject', subject)
  if (person !== null) address.set('person', person)
  if (from !== '') address.set('from', from)
  if (to !== '') address.set('to', to)
  if (find !== '') address.set('find', find)
  if (skip > 0) address.set('skip', String(skip))
  return `?${address.toString()}`
}

/** The filters as the server takes them. */
export function filtersOf({ subject, person, from, to, find }: LogView) {
  return {
    ...(subject !== null && { subject }),
    ...(person !== null && { person }),
    ...(from !== '' && { from }),
    ...(to !== '' && { to }),
    ...(find !== '' && { find }),
  }
}

export function isFiltered(view: LogView): boolean {
  return Object.keys(filtersOf(view)).length > 0
}

/** Days the wrong way round find nothing: said before anybody wonders why. */
export function daysAreTurned({ from, to }: Pick<LogView, 'from' | 'to'>): boolean {
  return from !== '' && to !== '' && to < from
}
