import { type ReactNode, useState } from 'react'
import look from './proof.module.css'

interface DisclosureProps {
  words: string
  /** How it stands, seen while it is closed. */
  short: string
  children: ReactNode
}

/** What may be said and need not be: out of the way until it is wanted. */
export function Disclosure({ words, short, children }: DisclosureProps) {
  const [isOpen, setIsOpen] = useState(false)
  return (
    <div className={look.disclosure}>
      <button type="button" aria-expanded={isOpen} onClick={() => setIsOpen(!isOpen)}>
        <span>{words}</span>
        <span className={look.fate}>{short}</span>
      </button>
      {isOpen && <div className={look.disclosed}>{children}</div>}
    </div>
  )
}
