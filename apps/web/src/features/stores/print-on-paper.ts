import { useEffect } from 'react'

/** Paper has no night shift: what is printed is ink on paper, whatever the screen shows. */
export function usePrintOnPaper(): void {
  useEffect(() => {
    const root = document.documentElement
    let shown: string | undefined
    const before = () => {
      shown = root.dataset['theme']
      root.dataset['theme'] = 'paper'
    }
    const after = () => {
      if (shown !== undefined) root.dataset['theme'] = shown
    }
    addEventListener('beforeprint', before)
    addEventListener('afterprint', after)
    return () => {
      removeEventListener('beforeprint', before)
      removeEventListener('afterprint', after)
    }
  }, [])
}
