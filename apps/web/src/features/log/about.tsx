import type { LogRow } from '@glandkeeper/contract/log'
import { Link } from 'react-router'
import css from './log.module.css'
import { pageOf } from './log-words.ts'

/** What kind of thing was changed and how it is called, as a way to its page where it has one. */
export function About({ row }: { row: Pick<LogRow, 'subject' | 'name'> }) {
  const to = pageOf(row)
  return (
    <span className={css.about}>
      <span className="soft">{row.subject}</span>{' '}
      {to === null ? (
        <span className={css.name}>{row.name}</span>
      ) : (
        <Link to={to} className={css.name}>
          {row.name}
        </Link>
      )}
    </span>
  )
}
