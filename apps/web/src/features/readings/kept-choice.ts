import { useSyncExternalStore } from 'react'

const listeners = new Set<() => void>()

function subscribe(listener: () => void) {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** One of a few words that stays chosen on this device; the first until somebody chooses. */
export function useKeptChoice<T extends string>(key: string, choices: readonly [T, ...T[]]): readonly [T, (choice: T) => void] {
  const chosen = useSyncExternalStore(
    subscribe,
    () => choices.find((choice) => choice === localStorage.getItem(key)) ?? choices[0],
  )
  const choose = (choice: T) => {
    localStorage.setItem(key, choice)
    for (const listener of listeners) listener()
  }
  return [chosen, choose]
}
