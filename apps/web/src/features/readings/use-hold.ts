import { useEffect, useRef } from 'react'

const BEFORE_REPEAT = 450
const EACH = 90

/** Once for a tap, again and again while held. A thumb that only scrolls past does nothing. */
export function useHold(act: () => void) {
  const latest = useRef(act)
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
  const wasHeld = useRef(false)
  useEffect(() => {
    latest.current = act
  })
  useEffect(() => () => clearTimeout(timer.current), [])
  const repeat = () => {
    wasHeld.current = true
    latest.current()
    timer.current = setTimeout(repeat, EACH)
  }
  const end = () => clearTimeout(timer.current)
  return {
    onPointerDown: () => {
      wasHeld.current = false
      timer.current = setTimeout(repeat, BEFORE_REPEAT)
    },
    onPointerUp: end,
    onPointerLeave: end,
    // The thumb scrolls: the browser takes the pointer away, and no click follows.
    onPointerCancel: end,
    onClick: () => {
      if (!wasHeld.current) latest.current()
      wasHeld.current = false
    },
  }
}
