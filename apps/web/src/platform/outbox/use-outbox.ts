import { useSyncExternalStore } from 'react'
import { outbox, type OutboxView } from './outbox.ts'

/** What waits on this device, shown anew whenever it changes. */
export function useOutbox(): OutboxView {
  return useSyncExternalStore(outbox.subscribe, outbox.view)
}
