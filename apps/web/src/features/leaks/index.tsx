import { NavLink } from 'react-router'
import css from './leak-pages.module.css'

const pages = [
  ['/leaks', 'Leaks'],
  ['/leaks/repeat', 'Repeat leakers'],
  ['/leaks/losses', 'Losses'],
  ['/leaks/rules', 'Rules and clocks'],
  ['/leaks/evidence', 'Evidence'],
] as const

/** The pages about leaks, on top of each of them. */
export function LeakPages() {
  return (
    <nav aria-label="Pages about leaks" className={css.pages}>
      {pages.map(([to, words]) => (
        <NavLink key={to} to={to} end>
          {words}
        </NavLink>
      ))}
    </nav>
  )
}
