import { useQueryClient } from '@tanstack/react-query'
import { useEffect, useSyncExternalStore } from 'react'
import { outbox } from '../../platform/outbox/outbox.ts'
import { useMe } from '../people/index.tsx'
import { pocketKey } from './queries.ts'
import { syncPocket } from './sync.ts'

export { emptyPocket } from './store.ts'
export { syncPocket } from './sync.ts'

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
let isAskedAgain = false

/** One sync at a time; asked for while one runs, another follows it. */
async function sync(personId: string, changed: () => void): Promise<void> {
  if (running) {
    isAskedAgain = true
    return running
  }
  running = syncPocket(personId, (share) => show({ share }))
    .then(
      ({ clockAheadMinutes }) => show({ isReached: true, clockAheadMinutes }),
      () => show({ isReached: false }),
    )
    .finally(() => {
      running = null
      show({ share: null })
      changed()
    })
  await running
  if (isAskedAgain) {
    isAskedAgain = false
    await sync(personId, changed)
  }
}

/** Keeps the pocket register up to date while somebody is signed in. Draws nothing. */
export function KeepPocket() {
  const queries = useQueryClient()
  const { personId } = useMe()
  useEffect(() => {
    const now = () =>
      void sync(personId, () => {
        void queries.invalidateQueries({ queryKey: pocketKey })
        void queries.invalidateQueries({ queryKey: ['board'] })
        void queries.invalidateQueries({ queryKey: ['valve'] })
      })
    now()
    const clock = setInterval(now, EVERY)
    addEventListener('online', now)
    const leave = outbox.onDelivered(now)
    return () => {
      clearInterval(clock)
      removeEventListener('online', now)
      leave()
    }
  }, [personId, queries])
  return null
}
