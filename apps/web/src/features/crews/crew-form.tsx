import { type Crew, CrewInput, hoursPerWeek } from '@glandkeeper/contract/crews'
import { faultsOf, type Fault } from '@glandkeeper/contract/problem'
import { innermost, quantities } from '@glandkeeper/contract/quantity'
import { useState, type SubmitEvent } from 'react'
import { faultBeside, faultsTold } from '../../ui/fault-beside.ts'
import { NumberInput, TextInput } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { crewDraftOf, crewOfDraft } from './crew-draft.ts'
import { CrewPeople } from './crew-people.tsx'
import css from './crews.module.css'
import { useSaveCrew } from './queries.ts'

const hours = quantities.get(innermost(hoursPerWeek))

/** Adds a crew, or changes the one given. */
export function CrewForm({ crew = null, onDone }: { crew?: Crew | null; onDone: () => void }) {
  const [draft, setDraft] = useState(() => crewDraftOf(crew))
  const [found, setFound] = useState<readonly Fault[]>([])
  const save = useSaveCrew(crew?.crewId ?? null)
  const told = faultsTold(save.error, found)
  const field = (name: 'name' | 'hoursPerWeek') => ({
    value: draft[name],
    onChange: (value: string) => setDraft({ ...draft, [name]: value }),
    fault: faultBeside(name, draft[name], told),
  })
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    save.reset()
    const body = crewOfDraft(draft)
    const checked = CrewInput.safeParse(body)
    setFound(checked.success ? [] : faultsOf(checked.error))
    if (checked.success) save.mutate(body, { onSuccess: onDone })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label={crew ? `Change ${crew.name}` : 'Add a crew'}>
      <div className={css.fields}>
        <TextInput label="Name" hint="early shift" maxLength={60} autoComplete="off" {...field('name')} />
        {hours && <NumberInput quantity={hours} {...field('hoursPerWeek')} />}
        <TextInput
          label="Skills"
          hint="what an area may ask for, with commas between: steam, confined space"
          autoComplete="off"
          value={draft.skills}
          onChange={(skills) => setDraft({ ...draft, skills })}
          fault={faultOfSkills(told)}
        />
      </div>
      <CrewPeople
        crewId={crew?.crewId ?? null}
        chosen={draft.personIds}
        onChange={(personIds) => setDraft({ ...draft, personIds })}
      />
      {save.error && <ProblemNote error={save.error} />}
      <div className={page.acts}>
        <button type="submit" className="main" disabled={save.isPending}>
          {crew ? 'Save the crew' : 'Add the crew'}
        </button>
        <button type="button" onClick={onDone}>
          {crew ? 'Leave it as it was' : 'Do not add one'}
        </button>
      </div>
    </form>
  )
}

/** One input holds all skills: the fault of any of them stands beside it. */
function faultOfSkills(told: readonly Fault[]): string | undefined {
  const fault = told.find(({ pointer }) => pointer.startsWith('#/skills'))
  return fault && (fault.pointer === '#/skills' ? 'Too many skills' : `Each skill: ${fault.detail}`)
}
