import { CrewInput } from '@glandkeeper/contract/crews'
import { faultsOf } from '@glandkeeper/contract/problem'
import { expect, it } from 'vitest'
import { crewDraftOf, crewOfDraft, skillsIn } from './crew-draft.ts'

it('reads skills between commas, each once', () => {
  expect(skillsIn(' steam, confined space ,,steam,')).toEqual(['steam', 'confined space'])
  expect(skillsIn('  ')).toEqual([])
})

it('a crew comes back as it was; an empty one has its faults by name', () => {
  const crew = { name: 'Early shift', hoursPerWeek: 37.5, skills: ['steam', 'bleach'] }
  const person = { personId: '019a0000-0000-7000-8000-000000000001', name: 'R. Oakes' }
  const draft = crewDraftOf({ crewId: person.personId, ...crew, people: [person] } as Parameters<typeof crewDraftOf>[0])
  expect(crewOfDraft(draft)).toEqual({ ...crew, personIds: [person.personId] })
  const checked = CrewInput.safeParse(crewOfDraft(crewDraftOf(null)))
  expect(checked.success ? [] : faultsOf(checked.error).map(({ pointer }) => pointer)).toEqual(['#/name', '#/hoursPerWeek'])
})
