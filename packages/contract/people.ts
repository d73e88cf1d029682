import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { everybody, Role } from './roles.ts'

export const PersonId = z.uuid()

export const Person = z.object({
  personId: PersonId,
  name: z.string(),
  signInName: z.string(),
  role: Role,
  site: z.object({ siteId: z.uuid(), name: z.string(), timeZone: z.string() }),
})
export type Person = z.infer<typeof Person>

export const signIn = endpoint({
  method: 'POST',
  path: '/api/session',
  who: 'anyone',
  body: z.strictObject({ signInName: z.string().trim().min(1).max(60), password: z.string().min(1).max(200) }),
  ok: Person,
  status: 201,
})

/** Nobody signed in is an answer here and not a refusal: every page asks it first. */
export const whoAmI = endpoint({
  method: 'GET',
  path: '/api/session',
  who: 'anyone',
  ok: z.object({ person: Person.nullable() }),
  status: 200,
})

export const signOut = endpoint({
  method: 'DELETE',
  path: '/api/session',
  who: everybody,
  ok: z.object({ signedOut: z.literal(true) }),
  status: 200,
})
