import { addPerson, changePerson, listPeople, type ListedPerson } from '@glandkeeper/contract/people'
import { changeSite, type SiteInput } from '@glandkeeper/contract/sites'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'
import { keepsRegister, me, useMe } from './index.tsx'
import { changeOf, newPersonOf, type PersonDraft } from './person-draft.ts'

export const people = queryOptions({
  queryKey: ['people'],
  queryFn: ({ signal }) => call(listPeople, { signal }),
})

export function useChangeSite() {
  const queries = useQueryClient()
  return useMutation({
    mutationFn: (body: SiteInput) => call(changeSite, { body }),
    onSuccess: (site) => {
      queries.setQueryData(me.queryKey, (person) => person && { ...person, site })
      // Days and weeks are counted in the time zone of the site: what was read before may stand on another day now.
      return queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== me.queryKey[0] })
    },
  })
}

/** Adds a person, or changes the one given. */
export function useSavePerson(person: ListedPerson | null) {
  const queries = useQueryClient()
  const isOneself = useMe().personId === person?.personId
  return useMutation({
    mutationFn: (draft: PersonDraft) =>
      person === null
        ? call(addPerson, { body: newPersonOf(draft) })
        : call(changePerson, { params: { personId: person.personId }, body: changeOf(draft) }),
    onSuccess: async () => {
      if (isOneself) await queries.invalidateQueries({ queryKey: me.queryKey })
      // Who has just signed themselves out, or become a fitter, would only be refused the list.
      const still = queries.getQueryData(me.queryKey)
      const refetchType = still && keepsRegister(still) ? 'active' : 'none'
      await queries.invalidateQueries({ queryKey: people.queryKey, refetchType })
    },
  })
}
