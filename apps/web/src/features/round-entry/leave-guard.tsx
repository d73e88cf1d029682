import { useEffect, useRef } from 'react'
import { useBlocker } from 'react-router'
import { counted } from '../../ui/count.ts'
import look from './round-entry.module.css'

/** Asks before the page is left with rows that are not saved; the browser asks by itself where the whole page goes. */
export function LeaveGuard({ unsaved }: { unsaved: number }) {
  const blocker = useBlocker(unsaved > 0)
  const asked = useRef<HTMLDivElement>(null)
  const isAsking = blocker.state === 'blocked'
  useEffect(() => {
    if (isAsking) asked.current?.focus()
  }, [isAsking])
  useEffect(() => {
    if (unsaved === 0) return undefined
    const ask = (event: BeforeUnloadEvent) => event.preventDefault()
    addEventListener('beforeunload', ask)
    return () => removeEventListener('beforeunload', ask)
  }, [unsaved])
  if (!isAsking) return null
  return (
    <div ref={asked} tabIndex={-1} role="alertdialog" aria-labelledby="leave-unsaved" className={look.leave}>
      <p id="leave-unsaved">
        <b>{counted(unsaved, 'row')} not saved.</b> What is typed stays on this device, and is here when you come back; the
        register has none of it.
      </p>
      <div className={look.acts}>
        <button type="button" className="main" onClick={() => blocker.reset()}>
          Stay and save
        </button>
        <button type="button" onClick={() => blocker.proceed()}>
          Leave
        </button>
      </div>
    </div>
  )
}
