import type { LeakStep } from '@glandkeeper/contract/leaks'

const DROP = 'c-5 7 -3.4 10.4 0 10.4s5 -3.4 0 -10.4Z'

/** A drop: it leaked; two: it came back. A nut: something was done. A dashed ring: put off. An open ring with a tick: no leak seen. */
export function StepMark({ what }: { what: LeakStep['what'] }) {
  return (
    <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
      {what === 'seen' && <path d={`M9 3${DROP}`} className="hotfill" />}
      {what === 'came back' && <path d={`M5 1${DROP}M13 6${DROP}`} className="hotfill" />}
      {what === 'attempt' && <path d="M4.5 2.5h9l4 6.5l-4 6.5h-9l-4 -6.5ZM6 9a3 3 0 1 0 6 0a3 3 0 1 0 -6 0" className="out" />}
      {what === 'put off' && <circle cx="9" cy="9" r="6.5" className="out dashed" />}
      {what === 'seen without a leak' && (
        <path d="M2.5 9a6.5 6.5 0 1 0 13 0a6.5 6.5 0 1 0 -13 0M6 9l2.4 2.6L12.4 6.6" className="out" />
      )}
    </svg>
  )
}
