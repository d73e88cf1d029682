import type { BodyIn } from '@glandkeeper/contract/endpoint'
import type { addCrew, Crew } from '@glandkeeper/contract/crews'
import { figureOf } from '../readings/index.ts'

/** A crew as typed, before it is known to fit the contract. */
export interface CrewDraft {
  readonly name: string
  readonly hoursPerWeek: string
  readonly skills: string
  readonly personIds: readonly string[]
}

export function crewDraftOf(crew: Crew | null): CrewDraft {
  return {
    name: crew?.name ?? '',
    hoursPerWeek: String(crew?.hoursPerWeek ?? ''),
    skills: crew?.skills.join(', ') ?? '',
    personIds: crew?.people.map(({ personId }) => personId) ?? [],
  }
}

/** What is sent. An empty figure is no number, which the contract says in words. */
export function crewOfDraft({ name, hoursPerWeek, skills, personIds }: CrewDraft): BodyIn<typeof addCrew> {
  return { name, hoursPerWeek: figureOf(hoursPerWeek) ?? Number.NaN, skills: skillsIn(skills), personIds: [...personIds] }
}

/**
 * Skills between commas, each once.
 *
 * @example skillsIn('steam, scaffold,, steam ') // → ['steam', 'scaffold']
 */
export function skillsIn(text: string): string[] {
  const skills = text.split(',').map((skill) => skill.trim())
  return [...new Set(skills)].filter((skill) => skill !== '')
}
