import { MissedReason } from '@glandkeeper/contract/events'
import type { DraftFieldsProps } from './draft.ts'
import look from './pad.module.css'

export function MissedFields({ draft, onChange }: DraftFieldsProps) {
  return (
    <label className={look.kind}>
      <span>Why</span>
      <select
        value={draft.missed ?? ''}
        onChange={({ target }) => onChange({ missed: MissedReason.safeParse(target.value).data ?? null })}
      >
        <option value="">choose</option>
        {MissedReason.options.map((reason) => (
          <option key={reason}>{reason}</option>
        ))}
      </select>
    </label>
  )
}
