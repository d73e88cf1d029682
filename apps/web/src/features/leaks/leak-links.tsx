import { Link } from 'react-router'
import { formatCount } from '../../ui/count.ts'
import { type LeakChange, leaksWith } from './leak-address.ts'
import css from './leaks.module.css'

/** A tag that leads to the leaks of its valve. */
export function TaggedValve({ tag }: { tag: string }) {
  return (
    <Link to={`/valves/${encodeURIComponent(tag)}/leaks`} className={css.tag}>
      {tag}
    </Link>
  )
}

/** A number that leads to the leaks it counts; none leads nowhere, and so does one no filter can name. */
export function LeakCount({ leaks, filters, of }: { leaks: number; filters: LeakChange | null; of: string }) {
  if (leaks === 0 || filters === null) return formatCount(leaks)
  return (
    <Link to={leaksWith(filters)} aria-label={`${formatCount(leaks)} leaks, ${of}`}>
      {formatCount(leaks)}
    </Link>
  )
}
