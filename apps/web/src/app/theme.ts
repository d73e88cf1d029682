import { useSyncExternalStore } from 'react'

type Theme = 'paper' | 'night'

const KEY = 'theme'
const systemIsDark = matchMedia('(prefers-color-scheme: dark)')
const listeners = new Set<() => void>()

/** What was chosen on this device; otherwise what the system asks for. */
function currentTheme(): Theme {
  const kept = localStorage.getItem(KEY)
  if (kept === 'paper' || kept === 'night') return kept
  return systemIsDark.matches ? 'night' : 'paper'
}

function show() {
  document.documentElement.dataset['theme'] = currentTheme()
  for (const listener of listeners) listener()
}

/** Before the first paint, so that a night shift is not met by a white page. */
export function startTheme() {
  systemIsDark.addEventListener('change', show)
  show()
}

export function chooseTheme(theme: Theme) {
  localStorage.setItem(KEY, theme)
  show()
}

export function useTheme(): Theme {
  return useSyncExternalStore((listener) => {
    listeners.add(listener)
    return () => listeners.delete(listener)
  }, currentTheme)
}
