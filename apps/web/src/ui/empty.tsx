import type { ReactNode } from 'react'
import css from './empty.module.css'

/** Nothing to show: says so in one line, and what to do about it in the next. */
export function Empty({ title, children }: { title: string; children?: ReactNode }) {
  return (
    <div className={css.empty}>
      <svg width="120" height="32" viewBox="0 0 120 32" aria-hidden="true">
        <path d="M4 1H54V6M4 31H54V26M4 6H54V12H4M4 26H54V20H4" className="ghost" />
        <path d="M0 16H120" className="centre" />
      </svg>
      <h2>{title}</h2>
      {children}
    </div>
  )
}
