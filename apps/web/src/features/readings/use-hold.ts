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
  return {
    onPressStart: () => {
      wasHeld.current = false
      timer.current = setTimeout(repeat, BEFORE_REPEAT)
    },
    onPressEnd: () => clearTimeout(timer.current),
    onPress: () => {
      if (!wasHeld.current) latest.current()
    },
  }
}
