import type { LogRow } from '@glandkeeper/contract/log'
import { formatMoment } from '../../platform/site-time.ts'
import page from '../../ui/page.module.css'
import { capital } from '../../ui/sentence.ts'
import { useMe } from '../people/index.tsx'
import { About } from './about.tsx'
import { FieldChanges } from './field-changes.tsx'
import css from './log.module.css'

/** For a desk: a row for each change, its fields under one another. */
export function LogTable({ rows }: { rows: readonly LogRow[] }) {
  const { timeZone } = useMe().site
  return (
    <table className={`${page.table} ${css.table}`}>
      <thead>
        <tr>
          <th scope="col">When</th>
          <th scope="col">Who</th>
          <th scope="col">What about</th>
          <th scope="col">Change, before → after</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.id}>
            <td className={css.when}>
              <time dateTime={row.at}>{formatMoment(row.at, timeZone)}</time>
            </td>
            <td>{row.by}</td>
            <td>
              <About row={row} />
            </td>
            <td>
              <p>{capital(row.what)}</p>
              <FieldChanges changes={row.changes} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
