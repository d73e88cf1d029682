import type { LogRow } from '@glandkeeper/contract/log'
import { formatMoment } from '../../platform/site-time.ts'
import { capital } from '../../ui/sentence.ts'
import { useMe } from '../people/index.tsx'
import { About } from './about.tsx'
import { FieldChanges } from './field-changes.tsx'
import css from './log.module.css'

/** For a phone: what it was about on top, who and when below it. */
export function LogCards({ rows }: { rows: readonly LogRow[] }) {
  const { timeZone } = useMe().site
  return (
    <ol className={css.cards}>
      {rows.map((row) => (
        <li key={row.id}>
          <About row={row} />
          <p>{capital(row.what)}</p>
          <FieldChanges changes={row.changes} />
          <p className="soft">
            {row.by}, <time dateTime={row.at}>{formatMoment(row.at, timeZone)}</time>
          </p>
        </li>
      ))}
    </ol>
  )
}
