import type { Crew, CrewInput } from '@glandkeeper/contract/crews'
import type { z } from 'zod'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Read, Write } from '../../platform/store.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

type CrewFields = z.output<typeof CrewInput>

/** Crews that have not been retired, by name. */
export async function crewsOf(read: Pick<Read, 'crew'>, siteId: string): Promise<Crew[]> {
  const rows = await read.crew.findMany({
    where: { siteId, retiredAt: null },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    include: { people: { where: { retiredAt: null }, orderBy: { name: 'asc' }, select: { id: true, name: true } } },
  })
  return rows.map(({ id, name, hoursPerWeek, skills, people }) => ({
    crewId: id,
    name,
    hoursPerWeek: hoursPerWeek as Crew['hoursPerWeek'],
    skills: skillsOf(skills),
    people: people.map((person) => ({ personId: person.id, name: person.name })),
  }))
}

/** As the contract wrote them. */
export function skillsOf(kept: string): string[] {
  return JSON.parse(kept) as string[]
}

export async function createCrew(write: Write, by: By, crew: CrewFields, now: Date): Promise<string> {
  const { name, hoursPerWeek, skills, personIds } = crew
  const id = newId()
  await write.crew.create({
    data: { id, siteId: by.siteId, name, hoursPerWeek, skills: JSON.stringify(skills), createdAt: now },
  })
  await putPeopleIn(write, by.siteId, id, personIds)
  await noteChange(write, by, { subject: 'crew', subjectId: id, what: 'crew added', before: {}, after: shown(crew) }, now)
  return id
}

export async function changeCrewOf(write: Write, by: By, crewId: string, crew: CrewFields, now: Date): Promise<void> {
  const before = await crewOf(write, by.siteId, crewId)
  const { name, hoursPerWeek, skills, personIds } = crew
  await write.crew.update({ where: { id: crewId }, data: { name, hoursPerWeek, skills: JSON.stringify(skills) } })
  await putPeopleIn(write, by.siteId, crewId, personIds)
  await noteChange(
    write,
    by,
    {
      subject: 'crew',
      subjectId: crewId,
      what: 'crew changed',
      before: { name: before.name, hoursPerWeek: before.hoursPerWeek, skills: skillsOf(before.skills).join(', ') },
      after: shown(crew),
    },
    now,
  )
}

/** Its areas and people are free again; what was planned for it is planned anew at the next planning. */
export async function retireCrewOf(write: Write, by: By, crewId: string, now: Date): Promise<void> {
  const { name } = await crewOf(write, by.siteId, crewId)
  await write.crew.update({ where: { id: crewId }, data: { retiredAt: now } })
  await write.person.updateMany({ where: { crewId }, data: { crewId: null } })
  await write.area.updateMany({ where: { crewId }, data: { crewId: null } })
  await noteChange(
    write,
    by,
    { subject: 'crew', subjectId: crewId, what: 'crew retired', before: { name }, after: { retired: 'yes' } },
    now,
  )
}

/** A crew of the site that is planned with. @throws crew/unknown */
export async function crewOf(read: Pick<Read, 'crew'>, siteId: string, crewId: string) {
  const crew = await read.crew.findFirst({ where: { id: crewId, siteId, retiredAt: null } })
  if (!crew) throw new Refusal('crew/unknown', crewId)
  return crew
}

/** A person walks with one crew at most: the last one that named them. */
async function putPeopleIn(write: Write, siteId: string, crewId: string, personIds: readonly string[]): Promise<void> {
  const known = await write.person.findMany({
    where: { siteId, retiredAt: null, id: { in: [...personIds] } },
    select: { id: true },
  })
  const stranger = personIds.find((personId) => !known.some(({ id }) => id === personId))
  if (stranger !== undefined) throw new Refusal('person/unknown', stranger)
  await write.person.updateMany({ where: { crewId, id: { notIn: [...personIds] } }, data: { crewId: null } })
  await write.person.updateMany({ where: { id: { in: [...personIds] } }, data: { crewId } })
}

function shown({ name, hoursPerWeek, skills, personIds }: CrewFields) {
  return { name, hoursPerWeek, skills: skills.join(', '), people: personIds.length }
}
