import { useSyncExternalStore } from 'react'

/** Keep in step with the width in the style sheets: below it, lists stand in for tables. */
const phone = matchMedia('(max-width: 760px)')

export function useIsNarrow(): boolean {
  return useSyncExternalStore(
    (listener) => {
      phone.addEventListener('change', listener)
      return () => phone.removeEventListener('change', listener)
    },
    () => phone.matches,
  )
}
