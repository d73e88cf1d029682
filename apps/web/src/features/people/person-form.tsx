import type { ListedPerson } from '@glandkeeper/contract/people'
import type { Fault } from '@glandkeeper/contract/problem'
import { Role, roles } from '@glandkeeper/contract/roles'
import { useState, type SubmitEvent } from 'react'
import { ChoiceInput, choicesOf, SwitchInput, TextInput } from '../../ui/field.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { faultBeside, faultsTold } from '../../ui/fault-beside.ts'
import { useMe } from './index.tsx'
import { draftOf, faultsIn } from './person-draft.ts'
import { useSavePerson } from './queries.ts'
import css from './site-page.module.css'

/** Adds a person, or changes the one given. */
export function PersonForm({ person = null, onDone }: { person?: ListedPerson | null; onDone: () => void }) {
  const [draft, setDraft] = useState(() => draftOf(person))
  const [found, setFound] = useState<readonly Fault[]>([])
  const isOneself = useMe().personId === person?.personId
  const save = useSavePerson(person)
  const told = faultsTold(save.error, found)
  const field = (name: 'name' | 'signInName' | 'password') => ({
    value: draft[name],
    onChange: (value: string) => setDraft({ ...draft, [name]: name === 'signInName' ? value.toLowerCase() : value }),
    fault: faultBeside(name, draft[name], told),
  })
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    save.reset()
    const faults = faultsIn(draft, person === null)
    setFound(faults)
    if (faults.length === 0) save.mutate(draft, { onSuccess: onDone })
  }
  return (
    <form onSubmit={submit} className={css.form} noValidate aria-label={person ? `Change ${person.name}` : 'Add a person'}>
      <div className={css.fields}>
        <TextInput label="Name" hint="R. Oakes" maxLength={60} autoComplete="off" {...field('name')} />
        {person === null && (
          <TextInput
            label="Sign-in name"
            hint="small letters, no spaces: r.oakes"
            maxLength={60}
            autoComplete="off"
            {...field('signInName')}
          />
        )}
        <ChoiceInput
          label="Role"
          hint="planners and engineers change the register"
          value={draft.role}
          choices={choicesOf(roles)}
          onChange={(role) => setDraft({ ...draft, role: Role.parse(role) })}
          fault={faultBeside('role', draft.role, told)}
        />
        <TextInput
          label={person ? 'New password' : 'Password'}
          hint={passwordHint(person !== null, isOneself)}
          type="password"
          maxLength={200}
          autoComplete="new-password"
          {...field('password')}
        />
      </div>
      {person && <SwitchInput label="Has left" isOn={draft.hasLeft} onChange={(hasLeft) => setDraft({ ...draft, hasLeft })} />}
      {save.error && <ProblemNote error={save.error} />}
      <div className={css.acts}>
        <button type="submit" className="main" disabled={save.isPending}>
          {person ? 'Save the person' : 'Add the person'}
        </button>
        <button type="button" onClick={onDone}>
          {person ? 'Leave it as it was' : 'Do not add one'}
        </button>
      </div>
    </form>
  )
}

function passwordHint(isChange: boolean, isOneself: boolean): string {
  if (!isChange) return 'at least 10 characters; tell it to them in person'
  return isOneself ? 'empty: keep the old one; a new one signs you out' : 'empty: keep the old one'
}
