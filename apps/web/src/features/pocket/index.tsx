import { useQueryClient } from '@tanstack/react-query'
import { useCallback, useEffect, useSyncExternalStore } from 'react'
import { outbox } from '../../platform/outbox/outbox.ts'
import { useMe } from '../people/index.tsx'
import { pocketKey } from './queries.ts'
import { syncPocket } from './sync.ts'

export { emptyPocket } from './store.ts'

const EVERY = 5 * 60_000

/** How a sync stands: a share while it runs, and when the last one was whole. */
interface SyncView {
  readonly share: number | null
  readonly isReached: boolean
  readonly clockAheadMinutes: number
}

let view: SyncView = { share: null, isReached: true, clockAheadMinutes: 0 }
const listeners = new Set<() => void>()
function show(change: Partial<SyncView>) {
  view = { ...view, ...change }
  for (const listener of listeners) listener()
}

export function useSyncView(): SyncView {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    () => view,
  )
}

let running: Promise<void> | null = null
let following: Promise<void> | null = null

/** One sync at a time. Asked for while one runs, the promise is that of the next: it knows of what was just done. */
function sync(personId: string): Promise<void> {
  if (running) {
    following ??= running.then(() => {
      following = null
      return sync(personId)
    })
    return following
  }
  running = syncPocket(personId, (share) => show({ share }))
    .then(
      ({ clockAheadMinutes }) => show({ isReached: true, clockAheadMinutes }),
      () => show({ isReached: false }),
    )
    .finally(() => {
      running = null
      show({ share: null })
    })
  return running
}

/** Brings the pocket register up to date, and has what is shown of it read anew. Without an answer it stays as it is. */
export function useSync(): () => Promise<void> {
  const queries = useQueryClient()
  const { personId } = useMe()
  return useCallback(async () => {
    await sync(personId)
    await queries.invalidateQueries({ queryKey: pocketKey })
  }, [personId, queries])
}

/** Keeps the pocket register up to date while somebody is signed in. Draws nothing. */
export function KeepPocket() {
  const queries = useQueryClient()
  const syncNow = useSync()
  useEffect(() => {
    const now = () => void syncNow()
    const afterDelivery = () => {
      now()
      // What the server shows of these valves is old too; at any other sync nobody here has changed it.
      void queries.invalidateQueries({ queryKey: ['board'] })
      void queries.invalidateQueries({ queryKey: ['valve'] })
    }
    now()
    const clock = setInterval(now, EVERY)
    addEventListener('online', now)
    const leave = outbox.onDelivered(afterDelivery)
    return () => {
      clearInterval(clock)
      removeEventListener('online', now)
      leave()
    }
  }, [syncNow, queries])
  return null
}
