import type { Standing } from '@glandkeeper/contract/reserve'
import type { ReactNode } from 'react'

const shapes: Readonly<Record<Standing, ReactNode>> = {
  ample: <path d="M2 2.2H14M2 13.8H14M8 2.2V13.8" stroke="currentColor" strokeWidth="1.8" />,
  watch: (
    <>
      <circle cx="8" cy="8" r="5.8" fill="none" stroke="currentColor" strokeWidth="1.8" />
      <circle cx="8" cy="8" r="2" fill="currentColor" />
    </>
  ),
  book: <path d="M3.5 1.5H12.5V14.5L8 10.5L3.5 14.5Z" fill="currentColor" />,
  spent: <path d="M1 5H15V8.2H1ZM1 9.4H15V12.6H1Z" fill="currentColor" />,
}

/** Two bars apart, a sight hole, a ribbon, two bars met: told apart without colour, and always with the word. */
export function StandingMark({ standing }: { standing: Standing }) {
  return (
    <span className={`standing ${standing}`}>
      <svg width="16" height="16" viewBox="0 0 16 16" aria-hidden="true">
        {shapes[standing]}
      </svg>
      {standing}
    </span>
  )
}
