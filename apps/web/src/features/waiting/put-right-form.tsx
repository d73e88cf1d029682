import { FieldEvent } from '@glandkeeper/contract/events'
import { innermost, quantities } from '@glandkeeper/contract/quantity'
import { type SubmitEvent, useState } from 'react'
import type { OutboxEntry } from '../../platform/outbox/entries.ts'
import { eventWith, fieldsOf } from './put-right.ts'
import look from './waiting.module.css'

/** Every figure and word of a refused entry, to be changed by hand. Its id stays: the server never had it. */
export function PutRightForm({ entry, onSave }: { entry: OutboxEntry; onSave: (event: FieldEvent) => void }) {
  const [texts, setTexts] = useState(() => fieldsOf(entry.event))
  const [faults, setFaults] = useState<readonly string[]>([])
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    const changed = eventWith(entry.event, texts)
    if (changed.ok) onSave(changed.event)
    else setFaults(changed.faults)
  }
  return (
    <form onSubmit={submit} className={look.form} noValidate>
      {Object.entries(texts).map(([field, text]) => (
        <label key={field}>
          {labelOf(entry.event, field)}
          <input value={text} onChange={({ target }) => setTexts({ ...texts, [field]: target.value })} />
        </label>
      ))}
      {faults.map((fault) => (
        <p key={fault} role="alert">
          {fault}
        </p>
      ))}
      <div className={look.acts}>
        <button type="submit" className="main">
          Save and send again
        </button>
      </div>
    </form>
  )
}

const words: Readonly<Record<string, string>> = { takenAt: 'Taken at', note: 'Note', takenBy: 'Done by', reason: 'Why' }

function labelOf(event: FieldEvent, field: string): string {
  const shape = FieldEvent.options.find((option) => option.shape.kind.value === event.kind)?.shape as
    Record<string, unknown> | undefined
  const meta = shape?.[field] === undefined ? undefined : quantities.get(innermost(shape[field] as never))
  if (!meta) return words[field] ?? field
  const side = /(Left|Right)$/.exec(field)?.[0].toLowerCase()
  return [meta.label, side, meta.unit && `in ${meta.unit}`].filter(Boolean).join(' ')
}
