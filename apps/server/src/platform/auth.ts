import { createHash, randomBytes } from 'node:crypto'
// For its types: it adds cookies to requests and replies.
import '@fastify/cookie'
import type { FastifyReply, FastifyRequest } from 'fastify'
import type { Caller } from '@glandkeeper/contract/endpoint'
import { Role } from '@glandkeeper/contract/roles'
import type { Clock } from './clock.ts'
import { Refusal } from './problem.ts'
import type { Read, Write } from './store.ts'

/** Who is asking: known from the session cookie, and the site everything they see belongs to. */
export interface SignedIn {
  readonly personId: string
  readonly name: string
  readonly signInName: string
  readonly role: Role
  readonly siteId: string
}

export const COOKIE = 'glandkeeper'
/** A name of its own: no http page may replace a Secure cookie, and after a trial of https nobody could sign in without. */
export const HTTPS_COOKIE = '__Host-glandkeeper'
const SESSION_DAYS = 30

export async function openSession(write: Write, personId: string, now: Date): Promise<string> {
  const token = randomBytes(32).toString('base64url')
  const expiresAt = new Date(now.getTime() + SESSION_DAYS * 86_400_000)
  await write.session.create({ data: { tokenHash: hashed(token), personId, createdAt: now, expiresAt } })
  await write.session.deleteMany({ where: { expiresAt: { lt: now } } })
  return token
}

export async function closeSession(write: Write, request: FastifyRequest): Promise<void> {
  const token = tokenOf(request)
  if (token !== null) await write.session.deleteMany({ where: { tokenHash: hashed(token) } })
}

export function giveCookie(request: FastifyRequest, reply: FastifyReply, token: string): void {
  const { name, ...place } = cookieFor(request)
  void reply.setCookie(name, token, {
    ...place,
    httpOnly: true,
    sameSite: 'strict',
    signed: true,
    maxAge: SESSION_DAYS * 86_400,
  })
}

export function takeCookie(request: FastifyRequest, reply: FastifyReply): void {
  const { name, ...place } = cookieFor(request)
  void reply.clearCookie(name, place)
}

function cookieFor({ protocol }: FastifyRequest): { name: string; path: string; secure: boolean } {
  const secure = protocol === 'https'
  return { name: secure ? HTTPS_COOKIE : COOKIE, path: '/', secure }
}

/** The person behind a request, or a refusal when the endpoint is not for them. */
export async function admit(read: Read, request: FastifyRequest, who: Caller, clock: Clock): Promise<SignedIn | null> {
  if (who === 'anyone') return null
  const person = await signedInBehind(read, request, clock)
  if (!person) throw new Refusal('person/not-signed-in')
  if (!who.includes(person.role))
    throw new Refusal('person/not-allowed', `a ${person.role} may not do this; it is for: ${who.join(', ')}`)
  return person
}

/** Whose session the cookie names, if it is theirs, not over, and they have not left. */
export async function signedInBehind(read: Read, request: FastifyRequest, clock: Clock): Promise<SignedIn | null> {
  const token = tokenOf(request)
  const session =
    token === null ? null : await read.session.findUnique({ where: { tokenHash: hashed(token) }, include: { person: true } })
  if (!session || session.expiresAt <= clock() || session.person.retiredAt) return null
  const { id: personId, name, signInName, siteId } = session.person
  return { personId, name, signInName, role: Role.parse(session.person.role), siteId }
}

/** A page of another site may not act with this browser's cookie. */
export function refuseForeignOrigin(request: FastifyRequest): void {
  const { origin } = request.headers
  if (request.method === 'GET' || origin === undefined) return
  if (!URL.canParse(origin) || new URL(origin).host !== request.headers.host) throw new Refusal('request/foreign-origin', origin)
}

function tokenOf(request: FastifyRequest): string | null {
  const cookie = request.cookies[cookieFor(request).name]
  if (cookie === undefined) return null
  const opened = request.unsignCookie(cookie)
  return opened.valid ? opened.value : null
}

function hashed(token: string): string {
  return createHash('sha256').update(token).digest('hex')
}
