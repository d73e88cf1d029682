import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { everybody, registerKeepers, Role } from './roles.ts'
import { Site } from './sites.ts'
import { text } from './text.ts'

export const PersonId = z.uuid()

export const Person = z.object({
  personId: PersonId,
  name: z.string(),
  signInName: z.string(),
  role: Role,
  site: Site,
})
export type Person = z.infer<typeof Person>

export const signIn = endpoint({
  method: 'POST',
  path: '/api/session',
  who: 'anyone',
  body: z.strictObject({ signInName: text(60, 1), password: z.string().min(1).max(200) }),
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

/** Long enough to stand guessing at the rate the sign-in allows. */
const Password = z.string().min(10, 'Password: at least 10 characters').max(200)

/** Signed in with, so small letters only and no spaces: `r.oakes`. */
const SignInName = z
  .string()
  .trim()
  .toLowerCase()
  .regex(/^[\p{L}\p{N}][\p{L}\p{N}._-]{0,59}$/u, 'Sign-in name: letters, digits and . _ -')

const personFields = { name: text(60, 1), role: Role }

export const ListedPerson = z.object({
  personId: PersonId,
  ...personFields,
  signInName: z.string(),
  /** Who has left signs in no more; what they entered stays theirs. */
  leftAt: z.iso.datetime().nullable(),
})
export type ListedPerson = z.infer<typeof ListedPerson>

export const listPeople = endpoint({
  method: 'GET',
  path: '/api/people',
  who: registerKeepers,
  ok: z.object({ people: z.array(ListedPerson) }),
  status: 200,
})

export const addPerson = endpoint({
  method: 'POST',
  path: '/api/people',
  who: registerKeepers,
  body: z.strictObject({ ...personFields, signInName: SignInName, password: Password }),
  ok: ListedPerson,
  status: 201,
})

/** A new password, and leaving, end every session of the person. */
export const changePerson = endpoint({
  method: 'PUT',
  path: '/api/people/:personId',
  who: registerKeepers,
  params: z.strictObject({ personId: PersonId }),
  body: z.strictObject({ ...personFields, password: Password.optional(), hasLeft: z.boolean() }),
  ok: ListedPerson,
  status: 200,
})
