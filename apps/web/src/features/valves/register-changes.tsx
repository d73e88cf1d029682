import type { ValveHistory } from '@glandkeeper/contract/valves'
import { nameInWords } from '@glandkeeper/units/format'
import { formatMoment } from '../../platform/site-time.ts'
import look from './timeline.module.css'

type Changes = ValveHistory['registerChanges'][number]['changes']

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
                <Fields changes={change.changes} />
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

/** Where everything is new, what it was before is not worth a line for each. */
function Fields({ changes }: { changes: Changes }) {
  const isFirst = changes.length > 1 && changes.every(({ before }) => before === '')
  if (!isFirst) return changes.map((change) => <Field key={change.field} change={change} isNew={false} />)
  return (
    <details>
      <summary>{changes.length} fields entered</summary>
      {changes.map((change) => (
        <Field key={change.field} change={change} isNew />
      ))}
    </details>
  )
}

function Field({ change: { field, before, after }, isNew }: { change: Changes[number]; isNew: boolean }) {
  return (
    <p>
      {fieldInWords(field)}:{' '}
      {!isNew && (
        <>
          <s className="soft">{before || 'empty'}</s> →{' '}
        </>
      )}
      {after || 'empty'}
    </p>
  )
}

/** @example fieldInWords('gland.boxBore') // → 'gland, box bore' */
function fieldInWords(field: string): string {
  return nameInWords(field.replaceAll('.', ', '))
}
