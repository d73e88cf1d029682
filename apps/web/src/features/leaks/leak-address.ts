import { leakFilters, listLeaks } from '@glandkeeper/contract/leaks'
import type { QueryOf } from '@glandkeeper/contract/endpoint'
import { z } from 'zod'

/** Leaks on one page of the list. */
export const PAGE = 100

const filters = z.object(leakFilters)
export type LeakFilters = Readonly<z.infer<typeof filters>>
export type LeakFilter = keyof LeakFilters
export type LeakOrder = QueryOf<typeof listLeaks>['order']

/** In the order they stand in the address, and on the page. */
export const filterNames = Object.keys(leakFilters) as readonly LeakFilter[]
export const orders = ['newest first', 'oldest first', 'worst first'] as const satisfies readonly LeakOrder[]

/** What of the leaks is looked at: kept in the address, so that it can be sent to somebody. */
export interface LeakView {
  readonly filters: LeakFilters
  readonly order: LeakOrder
  readonly skip: number
}

/** What is no filter is left out, not an error: addresses are typed and shortened by hand. */
export function leakViewOf(address: URLSearchParams): LeakView {
  const given = filterNames.flatMap((name) => {
    const found = filters.shape[name].safeParse(address.get(name) ?? undefined)
    return found.success && found.data !== undefined && found.data !== '' ? [[name, found.data] as const] : []
  })
  const skip = address.get('skip') ?? ''
  return {
    filters: Object.fromEntries(given),
    order: orders.find((order) => order === address.get('order')) ?? 'newest first',
    skip: /^\d{1,7}$/.test(skip) ? Number(skip) : 0,
  }
}

/** Null takes a filter away. */
export type LeakChange = Partial<Readonly<Record<LeakFilter, string | null>>> & { order?: LeakOrder; skip?: number }

/**
 * The query part of the address of a view with something changed. With another filter or order the list begins anew.
 *
 * @example withLeaks({ filters: { area: 'BM' }, order: 'newest first', skip: 100 }, { month: '2026-03' }) // → '?area=BM&month=2026-03'
 */
export function withLeaks(view: LeakView, { order = view.order, skip = 0, ...change }: LeakChange): string {
  const wanted: Readonly<Record<string, string | null | undefined>> = { ...view.filters, ...change }
  const address = new URLSearchParams()
  for (const name of filterNames) {
    const value = wanted[name]
    if (typeof value === 'string' && value !== '') address.set(name, value)
  }
  if (order !== 'newest first') address.set('order', order)
  if (skip > 0) address.set('skip', String(skip))
  return `?${address.toString()}`
}

/** Where a number of another page leads to: the leaks that were counted for it. */
export function leaksWith(change: LeakChange): string {
  return `/leaks${withLeaks({ filters: {}, order: 'newest first', skip: 0 }, change)}`
}
