import type { ValveHistory } from '@glandkeeper/contract/valves'
import { formatMoment } from '../../platform/site-time.ts'
import look from './timeline.module.css'

/** Who changed what the valve is: each field from what to what. */
export function RegisterChanges({ changes, timeZone }: { changes: ValveHistory['registerChanges']; timeZone: string }) {
  const newestFirst = changes.toSorted((a, b) => Date.parse(b.at) - Date.parse(a.at))
  return (
    <section className={look.section} aria-labelledby="register-changes">
      <h2 id="register-changes">Changes in the register</h2>
      {changes.length === 0 && <p className="soft">Unchanged since it was entered.</p>}
      <ol className={look.list}>
        {newestFirst.map((change) => (
          <li key={change.at + change.what} className={look.row}>
            <div className={look.line}>
              <p className={look.when}>
                <time dateTime={change.at}>{formatMoment(change.at, timeZone)}</time>
              </p>
              <div className={look.words}>
                <p>{change.what}</p>
                {change.changes.map(({ field, before, after }) => (
                  <p key={field}>
                    {field}: <s className="soft">{before || 'empty'}</s> → {after || 'empty'}
                  </p>
                ))}
              </div>
              <p className={look.source}>
                <span>{change.by}</span>
              </p>
            </div>
          </li>
        ))}
      </ol>
    </section>
  )
}
