import type { addPerson, changePerson, ListedPerson } from '@glandkeeper/contract/people'
import type { BodyOf } from '@glandkeeper/contract/endpoint'
import { registerKeepers, Role } from '@glandkeeper/contract/roles'
import type { PersonModel } from '../../generated/sqlite/models.ts'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Read, Write } from '../../platform/store.ts'

type NewPerson = Omit<BodyOf<typeof addPerson>, 'password'> & { readonly passwordHash: string }
type PersonChange = Omit<BodyOf<typeof changePerson>, 'password'> & { readonly passwordHash: string | null }

export async function peopleOf(read: Read, siteId: string): Promise<ListedPerson[]> {
  const people = await read.person.findMany({ where: { siteId }, orderBy: [{ name: 'asc' }, { id: 'asc' }] })
  return people.map(presentPerson)
}

/** Adds a person to the writer's site. Sign-in names are one to a register, whatever the site. */
export async function addToSite(
  write: Write,
  by: SignedIn,
  { passwordHash, ...person }: NewPerson,
  now: Date,
): Promise<ListedPerson> {
  if (await write.person.findUnique({ where: { signInName: person.signInName } }))
    throw new Refusal('person/name-taken', person.signInName)
  const row = await write.person.create({ data: { ...person, id: newId(), siteId: by.siteId, passwordHash, createdAt: now } })
  await noteChange(write, by, { subject: 'person', subjectId: row.id, what: 'person added', before: {}, after: person }, now)
  return presentPerson(row)
}

/** Changes a person of the writer's site. Somebody must be left who may undo it. */
export async function changeInSite(
  write: Write,
  by: SignedIn,
  personId: string,
  change: PersonChange,
  now: Date,
): Promise<ListedPerson> {
  const before = await write.person.findFirst({ where: { id: personId, siteId: by.siteId } })
  if (!before) throw new Refusal('person/unknown', personId)
  const { name, role, hasLeft, passwordHash } = change
  const retiredAt = hasLeft ? (before.retiredAt ?? now) : null
  const row = await write.person.update({
    where: { id: personId },
    data: { name, role, retiredAt, ...(passwordHash && { passwordHash }) },
  })
  const keepers = await write.person.count({ where: { siteId: by.siteId, retiredAt: null, role: { in: [...registerKeepers] } } })
  if (keepers === 0) throw new Refusal('person/last-keeper', before.name)
  if (passwordHash || hasLeft) await write.session.deleteMany({ where: { personId } })
  const shown = (person: PersonModel) => ({ name: person.name, role: person.role, left: person.retiredAt !== null })
  const what = passwordHash ? 'person changed, new password' : 'person changed'
  await noteChange(write, by, { subject: 'person', subjectId: personId, what, before: shown(before), after: shown(row) }, now)
  return presentPerson(row)
}

function presentPerson({ id, name, signInName, role, retiredAt }: PersonModel): ListedPerson {
  return { personId: id, name, signInName, role: Role.parse(role), leftAt: retiredAt?.toISOString() ?? null }
}
