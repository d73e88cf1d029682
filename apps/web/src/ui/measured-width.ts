import { type RefCallback, useCallback, useState } from 'react'

/** The width a drawing has got, in whole px, so that lettering keeps its size on a phone; null until measured. */
export function useMeasuredWidth(): readonly [RefCallback<HTMLElement>, number | null] {
  const [width, setWidth] = useState<number | null>(null)
  const measure = useCallback((element: HTMLElement | null) => {
    if (!element) return undefined
    const observer = new ResizeObserver(([entry]) => {
      if (entry) setWidth(Math.floor(entry.contentRect.width))
    })
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return [measure, width]
}
