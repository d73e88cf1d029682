import { BoardOrder } from '@glandkeeper/contract/board'
import { Standing } from '@glandkeeper/contract/reserve'

/** What of the board is looked at, and in which order. The address holds it, so a view can be sent to somebody. */
export interface BoardView {
  standing?: Standing
  area?: string
  service?: string
  find?: string
  order: BoardOrder
}

const firstOrder: BoardOrder = 'runs out first'

/** Anything in an address that is not a view is left out, not an error: addresses are typed and shortened by hand. */
export function viewOf(address: URLSearchParams): BoardView {
  const standing = Standing.safeParse(address.get('standing')).data
  const area = address.get('area')
  const service = address.get('service')
  const find = address.get('find')
  return {
    order: BoardOrder.safeParse(address.get('order')).data ?? firstOrder,
    ...(standing && { standing }),
    ...(area && { area }),
    ...(service && { service }),
    ...(find && { find }),
  }
}

/** The address of the same view with something changed; null takes a filter away. */
export function addressWith(view: BoardView, change: { [Part in keyof BoardView]?: BoardView[Part] | null }): string {
  const address = new URLSearchParams()
  for (const [part, value] of Object.entries({ ...view, ...change })) {
    if (value && value !== firstOrder) address.set(part, value)
  }
  return address.size === 0 ? '?' : `?${address.toString()}`
}

export function isFiltered({ standing, area, service, find }: BoardView): boolean {
  return [standing, area, service, find].some((part) => part !== undefined)
}
