import type { LogRow } from '@glandkeeper/contract/log'
import { useMe } from '../people/index.tsx'
import css from './log.module.css'
import { fieldInWords, foldChanges, foldedInWords, isNew } from './log-words.ts'
import { valueInWords } from './value-words.ts'

type Changes = LogRow['changes']

/** Each field from what to what; the rest of many, and the fields of something new, at a touch. */
export function FieldChanges({ changes }: { changes: Changes }) {
  const { shown, folded } = foldChanges(changes)
  const isEntered = isNew(changes)
  return (
    <>
      <Fields changes={shown} isEntered={isEntered} />
      {folded.length > 0 && (
        <details className={css.folded}>
          <summary>{foldedInWords(folded.length, isEntered)}</summary>
          <Fields changes={folded} isEntered={isEntered} />
        </details>
      )}
    </>
  )
}

function Fields({ changes, isEntered }: { changes: readonly Changes[number][]; isEntered: boolean }) {
  const { timeZone } = useMe().site
  if (changes.length === 0) return null
  return (
    <ul className={css.fields}>
      {changes.map(({ field, before, after }) => (
        <li key={field}>
          <span className="soft">{fieldInWords(field)}:</span>{' '}
          {!isEntered && (
            <>
              <s className={css.before}>{valueInWords(field, before, timeZone)}</s> →{' '}
            </>
          )}
          <span className={css.after}>{valueInWords(field, after, timeZone)}</span>
        </li>
      ))}
    </ul>
  )
}
