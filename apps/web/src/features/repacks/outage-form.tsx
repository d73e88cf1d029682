import { type Outage, OutageInput } from '@glandkeeper/contract/outages'
import { type Fault, faultsOf } from '@glandkeeper/contract/problem'
import { type SubmitEvent, useState } from 'react'
import { faultsTold } from '../../ui/fault-beside.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { emptyOutage, outageDraftOf, outageOfDraft } from './outage-draft.ts'
import { OutageFields } from './outage-fields.tsx'
import { useSaveOutage } from './queries.ts'
import css from './repacks.module.css'

/** Adds an outage, or changes the one given. */
export function OutageForm({ outage = null, onDone }: { outage?: Outage | null; onDone: () => void }) {
  const [draft, setDraft] = useState(() => (outage ? outageDraftOf(outage) : emptyOutage))
  const [found, setFound] = useState<readonly Fault[]>([])
  const save = useSaveOutage(outage)
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    save.reset()
    const body = outageOfDraft(draft)
    const checked = OutageInput.safeParse(body)
    setFound(checked.success ? [] : faultsOf(checked.error))
    if (checked.success) save.mutate(body, { onSuccess: onDone })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label={outage ? `Change ${outage.name}` : 'Add an outage'}>
      <OutageFields draft={draft} onChange={setDraft} faults={faultsTold(save.error, found)} />
      {save.error && <ProblemNote error={save.error} />}
      <div className={page.acts}>
        <button type="submit" className="main" disabled={save.isPending}>
          {outage ? 'Save the outage' : 'Add the outage'}
        </button>
        <button type="button" onClick={onDone}>
          {outage ? 'Leave it as it was' : 'Do not add one'}
        </button>
      </div>
    </form>
  )
}
