import type { BodyIn } from '@glandkeeper/contract/endpoint'
import { addPerson, changePerson, type ListedPerson } from '@glandkeeper/contract/people'
import { faultsOf, type Fault } from '@glandkeeper/contract/problem'
import type { Role } from '@glandkeeper/contract/roles'

/** A person as typed, before it is known to fit the contract. */
export interface PersonDraft {
  readonly name: string
  readonly signInName: string
  readonly role: Role
  readonly password: string
  readonly hasLeft: boolean
}

/** The form starts from the person given; a new one starts in the role that may do least. */
export function draftOf(person: ListedPerson | null): PersonDraft {
  return {
    name: person?.name ?? '',
    signInName: person?.signInName ?? '',
    role: person?.role ?? 'fitter',
    password: '',
    hasLeft: person !== null && person.leftAt !== null,
  }
}

export function newPersonOf({ name, signInName, role, password }: PersonDraft): BodyIn<typeof addPerson> {
  return { name, signInName, role, password }
}

/** An empty password is left out, so that the old one stays. */
export function changeOf({ name, role, password, hasLeft }: PersonDraft): BodyIn<typeof changePerson> {
  return { name, role, hasLeft, ...(password !== '' && { password }) }
}

/** What the contract would refuse, known before anything is sent. */
export function faultsIn(draft: PersonDraft, isNew: boolean): Fault[] {
  const checked = isNew ? addPerson.body.safeParse(newPersonOf(draft)) : changePerson.body.safeParse(changeOf(draft))
  return checked.success ? [] : faultsOf(checked.error)
}

/** Those who work here first; who has left stays on the list, since their entries stay theirs. */
export function inListOrder(people: readonly ListedPerson[]): ListedPerson[] {
  return people.toSorted((one, other) => Number(one.leftAt !== null) - Number(other.leftAt !== null))
}
