import type { DraftFieldsProps } from './draft.ts'
import { formatDay } from '../../platform/site-time.ts'
import look from './pad.module.css'

/** For what is entered late, or needs a word more. Out of the way until it is wanted. */
export function TimeAndNote({ draft, onChange }: DraftFieldsProps) {
  return (
    <details className={look.more}>
      <summary>{draft.takenAt === null ? 'Another time, or a note' : `Taken ${formatDay(draft.takenAt)}; a note`}</summary>
      <label>
        <span>Date and time, empty for now</span>
        <input
          type="datetime-local"
          value={draft.takenAt ?? ''}
          onChange={({ target }) => onChange({ takenAt: target.value === '' ? null : target.value })}
        />
      </label>
      <label>
        <span>Done by, if not by you</span>
        <input type="text" maxLength={60} value={draft.takenBy} onChange={({ target }) => onChange({ takenBy: target.value })} />
      </label>
      <label>
        <span>Note</span>
        <textarea rows={2} maxLength={400} value={draft.note} onChange={({ target }) => onChange({ note: target.value })} />
      </label>
    </details>
  )
}
