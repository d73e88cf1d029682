import type { Area } from '@glandkeeper/contract/areas'
import type { Unusual } from '@glandkeeper/contract/quantity'
import type { ValveInput } from '@glandkeeper/contract/valves'
import { useEffect, useRef, useState, type ReactNode, type SubmitEvent } from 'react'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { problemOfForm, type Refused } from './refused.ts'
import { checkDraft, unusualIn, unusualInWords, type FieldFaults, type ValveDraft } from './valve-draft.ts'
import { FormField } from './valve-form-field.tsx'
import { groups, valveFields } from './valve-fields.ts'
import css from './valve-form.module.css'

interface ValveFormProps {
  draft: ValveDraft
  onChange: (draft: ValveDraft) => void
  areas: readonly Area[]
  saveWords: string
  isSaving: boolean
  error: unknown
  onSave: (valve: ValveInput) => void
  /** Said above the button. */
  note?: ReactNode
  /** The act that stands in the place of saving while saving must be refused. */
  insteadOfSaving?: ReactNode
}

export function ValveForm({ draft, onChange, areas, saveWords, isSaving, error, onSave, note, insteadOfSaving }: ValveFormProps) {
  const [typedFaults, setTypedFaults] = useState<FieldFaults>({})
  const [unusual, setUnusual] = useState<Unusual[]>([])
  const { form, showFirstFault } = useFirstFault()
  const refused = problemOfForm(error)
  const faults = { ...refused.byField, ...typedFaults }

  const save = (valve: ValveInput) => {
    setUnusual([])
    onSave(valve)
  }
  const saveAllTheSame = () => {
    const { valve } = checkDraft(draft)
    if (valve) save(valve)
  }
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    const checked = checkDraft(draft)
    setTypedFaults(checked.faults ?? {})
    const strange = checked.valve ? unusualIn(checked.valve) : []
    setUnusual(strange)
    if (checked.faults) showFirstFault()
    if (checked.valve && strange.length === 0) save(checked.valve)
  }
  return (
    <form ref={form} onSubmit={submit} className={css.form} noValidate>
      {groups.map(({ title, pointers }) => (
        <fieldset key={title} className={css.group}>
          <legend>{title}</legend>
          {pointers.map((pointer) => (
            <FormField
              key={pointer}
              field={fieldAt(pointer)}
              value={draft[pointer] ?? ''}
              fault={faults[pointer]}
              areas={areas}
              onChange={(value) => {
                setTypedFaults({ ...typedFaults, [pointer]: undefined } as FieldFaults)
                setUnusual([])
                onChange({ ...draft, [pointer]: value })
              }}
            />
          ))}
        </fieldset>
      ))}
      <Faults count={Object.values(faults).filter(Boolean).length} refused={refused} />
      {note}
      {unusual.length > 0 ? (
        <AskAgain unusual={unusual} isSaving={isSaving} onYes={saveAllTheSame} onNo={() => setUnusual([])} />
      ) : (
        (insteadOfSaving ?? (
          <button type="submit" className="main" disabled={isSaving}>
            {isSaving ? 'Saving' : saveWords}
          </button>
        ))
      )}
    </form>
  )
}

/** The form is longer than a screen: a fault far up is brought into sight once it has been marked. */
function useFirstFault() {
  const form = useRef<HTMLFormElement>(null)
  const [tries, setTries] = useState(0)
  useEffect(() => {
    if (tries > 0)
      form.current?.querySelector<HTMLElement>('[data-invalid] input:not([aria-hidden] *), [data-invalid] button')?.focus()
  }, [tries])
  return { form, showFirstFault: () => setTries(tries + 1) }
}

function fieldAt(pointer: string) {
  const field = valveFields.get(pointer)
  if (!field) throw new Error(`no field ${pointer} in the contract`)
  return field
}

function Faults({ count, refused }: { count: number; refused: Refused }) {
  if (refused.error) return <ProblemNote error={refused.error} />
  if (count === 0) return null
  return (
    <p role="alert" className="hot">
      {count === 1 ? 'One field has a fault. It is marked above.' : `${count} fields have a fault. They are marked above.`}
    </p>
  )
}

interface AskAgainProps {
  unusual: readonly Unusual[]
  isSaving: boolean
  onYes: () => void
  onNo: () => void
}

function AskAgain({ unusual, isSaving, onYes, onNo }: AskAgainProps) {
  const note = useRef<HTMLDivElement>(null)
  useEffect(() => {
    note.current?.scrollIntoView({ block: 'nearest' })
  }, [])
  return (
    <div ref={note} role="alert" className={css.ask}>
      <ul>
        {unusual.map((one) => (
          <li key={one.field}>{unusualInWords(one)}</li>
        ))}
      </ul>
      <p>Save it all the same?</p>
      <div className={css.acts}>
        <button type="button" className="main" onClick={onYes} disabled={isSaving}>
          Save it all the same
        </button>
        <button type="button" onClick={onNo}>
          Look at the figures again
        </button>
      </div>
    </div>
  )
}
