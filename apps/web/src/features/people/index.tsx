import { signIn, signOut, whoAmI, type Person } from '@glandkeeper/contract/people'
import { registerKeepers, type Role } from '@glandkeeper/contract/roles'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { createContext, use, type ReactNode, useState } from 'react'
import { call, Unreachable } from '../../platform/client.ts'
import { sessionKey } from '../../platform/query.ts'
import { atSite } from '../../platform/site-time.ts'
import page from '../../ui/page.module.css'
import { keepPerson, keptPerson } from './kept-person.ts'

export { keptPerson }

/** Who is signed in on this device; null is nobody. */
export const me = queryOptions({
  queryKey: sessionKey,
  queryFn: async ({ signal }): Promise<Person | null> => {
    try {
      const { person } = await call(whoAmI, { signal })
      if (person) keepPerson(person)
      return person
    } catch (error) {
      const kept = error instanceof Unreachable ? keptPerson() : null
      if (!kept) throw error
      return kept
    }
  },
  staleTime: 60_000,
})

const SignedIn = createContext<Person | null>(null)
export const SignedInProvider = SignedIn.Provider

/** The person every page under the shell is shown to. */
export function useMe(): Person {
  const person = use(SignedIn)
  if (!person) throw new Error('useMe is for pages under the shell')
  return person
}

/** The day of the site when the page was opened. */
export function useSiteToday(): Date {
  const { site } = useMe()
  const [today] = useState(() => atSite(new Date(), site.timeZone))
  return today
}

/** Planners and engineers change the register; a fitter reports facts. */
export function keepsRegister(person: Person): boolean {
  return (registerKeepers as readonly Role[]).includes(person.role)
}

/** Pages that change the register: a fitter is told who may, and not met by a refusal after typing. */
export function ForRegisterKeepers({ children }: { children: ReactNode }) {
  if (keepsRegister(useMe())) return children
  return (
    <main className={page.page}>
      <h1>Planners and engineers change the register</h1>
      <p>You are signed in as a fitter. Tell a planner or engineer of your site what should be changed.</p>
    </main>
  )
}

export function useSignIn() {
  const queries = useQueryClient()
  return useMutation({
    mutationFn: (body: { signInName: string; password: string }) => call(signIn, { body }),
    onSuccess: (person) => {
      keepPerson(person)
      queries.setQueryData(sessionKey, person)
    },
  })
}

export function useSignOut() {
  const queries = useQueryClient()
  return useMutation({
    mutationFn: () => call(signOut),
    onSuccess: () => {
      keepPerson(null)
      // The next person on this device must not be shown what was read for this one.
      queries.removeQueries({ predicate: (query) => query.queryKey[0] !== sessionKey[0] })
      queries.setQueryData(sessionKey, null)
    },
  })
}
