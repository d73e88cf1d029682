import rateLimit from '@fastify/rate-limit'
import { hash, verify } from '@node-rs/argon2'
import type { FastifyInstance } from 'fastify'
import { addPerson, changePerson, listPeople, type Person, signIn, signOut, whoAmI } from '@glandkeeper/contract/people'
import { type Role } from '@glandkeeper/contract/roles'
import { closeSession, giveCookie, openSession, signedInBehind, takeCookie } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'
import type { Read, Write } from '../../platform/store.ts'
import { addToSite, changeInSite, peopleOf } from './keep.ts'

/** Compared when nobody has the name, so that a wrong name takes as long as a wrong password. */
const nobodysHash = hash('no person has this password')
const TRIES_PER_MINUTE = 10
const ADDRESS_TRIES_PER_MINUTE = 120

export async function peopleRoutes(app: FastifyInstance, platform: Platform): Promise<void> {
  const { store, clock } = platform
  route(app, platform, whoAmI, async ({ request }) => {
    const me = await signedInBehind(store.read, request, clock)
    return { person: me && (await personWithId(store.read, me.personId)) }
  })

  route(app, platform, signOut, async ({ request, reply }) => {
    await store.write((write) => closeSession(write, request))
    takeCookie(request, reply)
    return { signedOut: true as const }
  })

  route(app, platform, listPeople, async ({ me }) => ({ people: await peopleOf(store.read, me.siteId) }))

  route(app, platform, addPerson, async ({ body: { password, ...person }, me }) => {
    const passwordHash = await hashPassword(password)
    return store.write((write) => addToSite(write, me, { ...person, passwordHash }, clock()))
  })

  route(app, platform, changePerson, async ({ params, body: { password, ...change }, me }) => {
    const passwordHash = password === undefined ? null : await hashPassword(password)
    return store.write((write) => changeInSite(write, me, params.personId, { ...change, passwordHash }, clock()))
  })

  await app.register(async (limited) => {
    // By address and name: a whole shift signs in from behind one address.
    await limited.register(rateLimit, {
      max: TRIES_PER_MINUTE,
      timeWindow: '1 minute',
      hook: 'preHandler',
      keyGenerator: (request) => `${request.ip} ${nameTried(request.body)}`,
    })
    // And by address alone, more loosely: many names tried from one place are guessing too.
    const triesOfAddress = limited.createRateLimit({
      max: ADDRESS_TRIES_PER_MINUTE,
      timeWindow: '1 minute',
      keyGenerator: (request) => request.ip,
    })
    route(limited, platform, signIn, async ({ body, request, reply }) => {
      const tries = await triesOfAddress(request)
      if (!tries.isAllowed && tries.isExceeded) throw new Refusal('person/too-many-tries')
      const person = await store.read.person.findUnique({ where: { signInName: body.signInName.toLowerCase() } })
      const matches = await verify(person?.passwordHash ?? (await nobodysHash), body.password)
      if (!person || !matches || person.retiredAt) throw new Refusal('person/wrong-sign-in')
      giveCookie(request, reply, await store.write((write) => openSession(write, person.id, clock())))
      return personWithId(store.read, person.id)
    })
  })
}

function nameTried(body: unknown): string {
  const name = (body as { signInName?: unknown } | null)?.signInName
  return typeof name === 'string' ? name.trim().toLowerCase().slice(0, 60) : ''
}

async function personWithId(read: Read, personId: string): Promise<Person> {
  const person = await read.person.findUniqueOrThrow({ where: { id: personId }, include: { site: true } })
  const { site, name, signInName } = person
  return {
    personId,
    name,
    signInName,
    role: person.role as Role,
    site: { siteId: site.id, name: site.name, timeZone: site.timeZone, nextStopOn: site.nextStopOn },
  }
}

export interface NewPerson {
  readonly siteId: string
  readonly name: string
  readonly signInName: string
  readonly role: Role
  readonly passwordHash: string
}

/** Hashing takes tens of milliseconds, so it is done before the write and not in it. */
export function hashPassword(password: string): Promise<string> {
  return hash(password)
}

/** Adds a person, or gives the one with that sign-in name a new password. */
export async function putPerson(write: Write, person: NewPerson, now: Date): Promise<string> {
  const signInName = person.signInName.toLowerCase()
  const known = await write.person.upsert({
    where: { signInName },
    create: { ...person, id: newId(), signInName, createdAt: now },
    update: { passwordHash: person.passwordHash },
  })
  return known.id
}
