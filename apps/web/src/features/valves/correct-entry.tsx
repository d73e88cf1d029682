import { FieldEvent, type TimelineEntry } from '@glandkeeper/contract/events'
import { useState } from 'react'
import { TextInput } from '../../ui/field.tsx'
import { correctionOf, PutRightForm, useSave } from '../readings/index.ts'
import look from './timeline.module.css'

/** Puts an entry right, or takes it back, with the reason. What was entered first stays beside it for ever. */
export function CorrectEntry({ entry, tag }: { entry: TimelineEntry; tag: string }) {
  const [isOpen, setIsOpen] = useState(false)
  const [reason, setReason] = useState('')
  const [isTried, setIsTried] = useState(false)
  const saving = useSave(tag)
  const event = FieldEvent.safeParse(entry.event)
  if (!event.success) return null
  if (saving.state === 'saved') return <p role="status">Saved: it is put right as soon as the register has it.</p>
  if (!isOpen)
    return (
      <button type="button" className={look.correct} onClick={() => setIsOpen(true)}>
        Put it right
      </button>
    )
  const save = (replacement: FieldEvent | null) => {
    setIsTried(true)
    if (reason.trim() === '') return
    const correction = correctionOf(event.data, { reason: reason.trim(), replacement }, new Date())
    void saving.save([correction], `${entry.says} ${replacement ? 'put right' : 'taken back'}`)
  }
  return (
    <div className={look.form}>
      <PutRightForm event={event.data} words="Save the correction" onSave={save}>
        <TextInput
          label="Reason"
          value={reason}
          onChange={setReason}
          maxLength={200}
          fault={isTried && reason.trim() === '' ? 'Is needed: both entries are kept, and this says why' : undefined}
        />
      </PutRightForm>
      <div className={look.acts}>
        <button type="button" onClick={() => save(null)}>
          Take it back whole
        </button>
        <button type="button" onClick={() => setIsOpen(false)}>
          Leave it as it is
        </button>
      </div>
      {saving.fault !== null && <p role="alert">Not saved: {saving.fault}</p>}
    </div>
  )
}
