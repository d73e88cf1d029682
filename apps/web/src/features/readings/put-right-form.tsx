import { type FieldEvent, schemaOfKind } from '@glandkeeper/contract/events'
import { innermost, quantities } from '@glandkeeper/contract/quantity'
import { type ReactNode, type SubmitEvent, useState } from 'react'
import { eventWith, fieldsOf } from './put-right.ts'
import look from './put-right-form.module.css'

interface PutRightFormProps {
  event: FieldEvent
  /** On the button that takes what was changed. */
  words: string
  onSave: (event: FieldEvent) => void
  /** Fields and buttons of the page's own, above the button. */
  children?: ReactNode
}

/** Every figure and word of an entry, to be changed by hand. */
export function PutRightForm({ event, words, onSave, children }: PutRightFormProps) {
  const [texts, setTexts] = useState(() => fieldsOf(event))
  const [faults, setFaults] = useState<readonly string[]>([])
  const submit = (submitted: SubmitEvent) => {
    submitted.preventDefault()
    const changed = eventWith(event, texts)
    setFaults(changed.ok ? [] : changed.faults)
    if (changed.ok) onSave(changed.event)
  }
  return (
    <form onSubmit={submit} className={look.form} noValidate>
      {Object.entries(texts).map(([field, text]) => (
        <label key={field}>
          {labelOf(event, field)}
          <input value={text} onChange={({ target }) => setTexts({ ...texts, [field]: target.value })} />
        </label>
      ))}
      {children}
      {faults.map((fault) => (
        <p key={fault} role="alert">
          {fault}
        </p>
      ))}
      <button type="submit" className="main">
        {words}
      </button>
    </form>
  )
}

const words: Readonly<Record<string, string>> = {
  takenAt: 'Taken at',
  note: 'Note',
  takenBy: 'Done by',
  reason: 'Why',
  leak: 'Leak',
  leakBefore: 'Leak before',
  leakAfter: 'Leak after',
  stem: 'Stem',
  family: 'Family',
  cut: 'Cut',
  batch: 'Batch',
  instrument: 'Meter',
  calibratedOn: 'Calibrated on',
  stemPosition: 'Stem stood',
  duty: 'Line was',
  treatment: 'What was done',
  approvedBy: 'Allowed by',
  until: 'Put off until',
}

function labelOf(event: FieldEvent, field: string): string {
  const shape = schemaOfKind(event.kind)?.shape as Record<string, unknown> | undefined
  const meta = shape?.[field] === undefined ? undefined : quantities.get(innermost(shape[field] as never))
  if (!meta) return words[field] ?? field
  const side = /(Left|Right)$/.exec(field)?.[0].toLowerCase()
  // Turns are turns.
  return [meta.label, side, meta.unit && meta.unit !== 'turn' && `in ${meta.unit}`].filter(Boolean).join(' ')
}
