import { showCutCard } from '@glandkeeper/contract/cut-cards'
import type { ValveCard } from '@glandkeeper/contract/pocket'
import { showValve } from '@glandkeeper/contract/valves'
import { queryOptions } from '@tanstack/react-query'
import { call, Unreachable } from '../../platform/client.ts'
import { openPocket } from './store.ts'

/** Everything that is read from the pocket register; read anew after each sync. */
export const pocketKey = ['pocket'] as const

/** What this device carries of one valve; where it carries nothing, the server is asked. */
export function cardQuery(tag: string) {
  return queryOptions({
    queryKey: [...pocketKey, 'card', tag],
    queryFn: async ({ signal }): Promise<ValveCard> => {
      const carried = await (await openPocket()).getFromIndex('cards', 'tag', tag)
      if (carried) return carried
      const { valve, state, expects, timeline } = await call(showValve, { params: { tag }, signal })
      const card = { valve, state, expects, timeline: timeline.slice(0, 3) }
      await (await openPocket()).put('cards', card)
      return card
    },
    // Its truth is on this device: there is nothing to wait for.
    staleTime: Infinity,
  })
}

export const roundsQuery = queryOptions({
  queryKey: [...pocketKey, 'rounds'],
  queryFn: async () => (await openPocket()).getAll('rounds'),
  staleTime: Infinity,
})

/** Standing and place of the carried valves, by id: for lists of stops and for finding a valve without signal. */
export const carriedQuery = queryOptions({
  queryKey: [...pocketKey, 'all'],
  queryFn: async () => (await openPocket()).getAll('cards'),
  staleTime: Infinity,
})

export const pocketStateQuery = queryOptions({
  queryKey: [...pocketKey, 'state'],
  queryFn: async () => (await (await openPocket()).get('state', 'state')) ?? null,
  staleTime: Infinity,
})

/** The cut card as the server works it out now; without a network, as it was when this device last heard of it. */
export async function cutCardOf(tag: string, signal: AbortSignal) {
  try {
    return await call(showCutCard, { params: { tag }, signal })
  } catch (error) {
    const carried = error instanceof Unreachable ? await (await openPocket()).get('cutCards', tag) : undefined
    if (!carried) throw error
    return carried.card
  }
}

/** What the store had when this device last heard of it, as it came. */
export async function keptStock(): Promise<unknown> {
  return (await openPocket()).get('stock', 'stock')
}
