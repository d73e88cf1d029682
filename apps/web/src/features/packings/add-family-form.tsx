import { figureNames } from '@glandkeeper/contract/packings'
import type { Fault } from '@glandkeeper/contract/problem'
import { useState, type SubmitEvent } from 'react'
import { NumberInput, TextInput } from '../../ui/field.tsx'
import { faultBeside, faultsTold } from '../../ui/fault-beside.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { AboutFields } from './about-fields.tsx'
import { checkDraft, type FamilyDraft, newDraft } from './family-draft.ts'
import { metaOf } from './family-words.ts'
import css from './packings.module.css'
import { useAddFamily } from './queries.ts'

/** A family the library does not have: every figure is the word of whoever adds it. */
export function AddFamilyForm({ onDone }: { onDone: () => void }) {
  const [draft, setDraft] = useState<FamilyDraft>(newDraft)
  const [found, setFound] = useState<readonly Fault[]>([])
  const add = useAddFamily()
  const told = faultsTold(add.error, found)
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    add.reset()
    const { family, faults } = checkDraft(draft)
    setFound(faults ?? [])
    if (family) add.mutate(family, { onSuccess: onDone })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label="Add a family of our own">
      <h2>A family of our own</h2>
      <TextInput
        label="Name"
        hint="what it is made of: graphite in PTFE"
        maxLength={60}
        value={draft.name}
        onChange={(name) => setDraft({ ...draft, name })}
        fault={faultBeside('name', draft.name, told)}
      />
      <AboutFields
        draft={draft}
        onChange={(about) => setDraft({ ...draft, ...about })}
        fault={faultBeside('description', draft.description, told)}
      />
      <div className={css.fields}>
        {figureNames.map((figure) => (
          <NumberInput
            key={figure}
            quantity={metaOf(figure)}
            value={draft.figures[figure]}
            onChange={(typed) => setDraft({ ...draft, figures: { ...draft.figures, [figure]: typed } })}
            fault={faultBeside(`figures/${figure}`, draft.figures[figure], told)}
          />
        ))}
      </div>
      {add.error && <ProblemNote error={add.error} />}
      <div className={page.acts}>
        <button type="submit" className="main" disabled={add.isPending}>
          Add the family
        </button>
        <button type="button" onClick={onDone}>
          Do not add one
        </button>
      </div>
    </form>
  )
}
