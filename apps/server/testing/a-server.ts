import { createHash } from 'node:crypto'
import type { FastifyInstance } from 'fastify'
import type { BodyIn, Endpoint, OkOf, ParamsIn, QueryIn } from '@glandkeeper/contract/endpoint'
import type { Role } from '@glandkeeper/contract/roles'
import { Problem } from '@glandkeeper/contract/problem'
import { onTestFinished } from 'vitest'
import { buildApp } from '../src/app.ts'
import type { ImportRuns } from '../src/features/imports/index.ts'
import type { Fits } from '../src/features/forecasts/index.ts'
import { COOKIE, HTTPS_COOKIE } from '../src/platform/auth.ts'
import type { Clock } from '../src/platform/clock.ts'
import { newId } from '../src/platform/ids.ts'
import type { Store } from '../src/platform/store.ts'
import { aDatabase, aStore } from './a-store.ts'

interface CallIn<E extends Endpoint> {
  params?: ParamsIn<E>
  query?: QueryIn<E>
  body?: BodyIn<E>
}

type Answer<E extends Endpoint> = { ok: true; status: number; value: OkOf<E> } | { ok: false; status: number; problem: Problem }

/** A whole server on a database of its own, with a site, an area BH and one person of each role. */
export interface TestServer {
  readonly app: FastifyInstance
  readonly store: Store
  readonly imports: ImportRuns
  readonly fits: Fits
  readonly databaseUrl: string
  readonly siteId: string
  readonly personIds: Readonly<Record<Role, string>>
  readonly now: Date
  /** Calls an endpoint as somebody, or as nobody, through HTTP. */
  readonly call: <E extends Endpoint>(role: Role | 'nobody', endpoint: E, input?: CallIn<E>) => Promise<Answer<E>>
  /** The same, for a test that expects it to work. */
  readonly expectOk: <E extends Endpoint>(role: Role, endpoint: E, input?: CallIn<E>) => Promise<OkOf<E>>
  readonly cookieOf: (role: Role) => string
  /** Before the test ends, where its register is to be left closed. */
  readonly stop: () => Promise<void>
}

/** A well-formed hash of a password nobody knows. */
const NOBODYS_PASSWORD = '$argon2id$v=19$m=19456,t=2,p=1$c29tZXNhbHRzb21lc2FsdA$aN3PPYzj0nVYJ1xQuo7hYdpO1jkuZR3Nj6mSSmLHxFY'

// Longer than any test moves its clock.
const HUNDRED_DAYS = 100 * 86_400_000
const NOW = new Date('2026-05-04T09:00:00.000Z')

interface ServerOptions {
  /** One of its own unless this one is given: see `aCopyToKeep`. */
  readonly databaseUrl?: string
  readonly clock?: Clock
  readonly pages?: string
  readonly behindProxy?: boolean
}

export async function aServer(options: ServerOptions = {}): Promise<TestServer> {
  const databaseUrl = options.databaseUrl ?? (await aDatabase())
  const store = await aStore(databaseUrl)
  return served(store, { databaseUrl, ...(await aSite(store, options.clock ?? (() => NOW))) }, options)
}

/** What a server works on: a register with its one site, and who may sign in there. */
export type Register = Pick<TestServer, 'databaseUrl' | 'siteId' | 'personIds'>

/** A server on a register that another one has been stopped on. */
export async function aServerOn(register: Register): Promise<TestServer> {
  return served(await aStore(register.databaseUrl), register)
}

async function aSite(store: Store, clock: Clock): Promise<Pick<Register, 'siteId' | 'personIds'>> {
  const siteId = newId()
  const personIds = { planner: newId(), fitter: newId(), engineer: newId() }
  await store.write(async (write) => {
    await write.site.create({
      data: { id: siteId, name: 'Test mill', timeZone: 'Europe/London', createdAt: clock(), readyAt: clock() },
    })
    await write.area.create({ data: { id: newId(), siteId, code: 'BH', name: 'Boiler house', walkPosition: 10, level: 0 } })
    for (const role of ['planner', 'fitter', 'engineer'] as const) {
      await write.person.create({
        data: {
          id: personIds[role],
          siteId,
          name: `The ${role}`,
          signInName: role,
          role,
          passwordHash: NOBODYS_PASSWORD,
          createdAt: clock(),
        },
      })
      const tokenHash = createHash('sha256').update(`token of ${role}`).digest('hex')
      await write.session.create({
        data: { tokenHash, personId: personIds[role], createdAt: clock(), expiresAt: new Date(clock().getTime() + HUNDRED_DAYS) },
      })
    }
  })
  return { siteId, personIds }
}

async function served(
  store: Store,
  { databaseUrl, siteId, personIds }: Register,
  options: ServerOptions = {},
): Promise<TestServer> {
  const clock = options.clock ?? (() => NOW)
  const { app, imports, fits } = await buildApp({
    store,
    databaseUrl,
    clock,
    secret: 's'.repeat(40),
    logLevel: 'silent',
    behindProxy: options.behindProxy ?? false,
    pages: options.pages ?? null,
  })
  await app.ready()
  let stopped: Promise<void> | null = null
  const stop = () => (stopped ??= stopAll())
  const stopAll = async () => {
    await imports.stop()
    await fits.close()
    await app.close()
    await store.close()
  }
  onTestFinished(stop)
  // Under both names: some tests come over a proxy with https.
  const cookieOf = (role: Role) =>
    [COOKIE, HTTPS_COOKIE].map((name) => `${name}=${encodeURIComponent(app.signCookie(`token of ${role}`))}`).join('; ')
  const call: TestServer['call'] = async (role, endpoint, input = {}) =>
    callThrough(app, role === 'nobody' ? null : cookieOf(role), endpoint, input)
  const expectOk: TestServer['expectOk'] = async (role, endpoint, input) => {
    const answer = await call(role, endpoint, input)
    if (!answer.ok) throw new Error(`${endpoint.method} ${endpoint.path}: ${JSON.stringify(answer.problem)}`)
    return answer.value
  }
  return { app, store, imports, fits, databaseUrl, siteId, personIds, now: clock(), call, expectOk, cookieOf, stop }
}

async function callThrough<E extends Endpoint>(
  app: FastifyInstance,
  cookie: string | null,
  endpoint: E,
  input: CallIn<E>,
): Promise<Answer<E>> {
  const params = (input.params ?? {}) as Record<string, unknown>
  const path = endpoint.path.replace(/:(\w+)/g, (_, name: string) => encodeURIComponent(String(params[name])))
  const query = new URLSearchParams(
    Object.entries((input.query ?? {}) as Record<string, unknown>).map(([name, value]) => [name, String(value)]),
  )
  const sent = input.body === undefined ? null : await sentAs(endpoint, input.body)
  const response = await app.inject({
    method: endpoint.method,
    url: query.size === 0 ? path : `${path}?${query.toString()}`,
    headers: { ...(cookie && { cookie }), ...(sent && { 'content-type': sent.type }) },
    ...(sent && { payload: sent.payload }),
  })
  const kind = response.statusCode < 400 ? endpoint.okKind : undefined
  const answer: unknown = kind === undefined ? response.json() : kind === 'csv' ? response.body : response.rawPayload
  if (response.statusCode >= 400) return { ok: false, status: response.statusCode, problem: Problem.parse(answer) }
  return { ok: true, status: response.statusCode, value: endpoint.ok.parse(answer) as OkOf<E> }
}

/** A body as it goes over the wire. */
async function sentAs(endpoint: Endpoint, body: unknown): Promise<{ type: string; payload: string | Buffer }> {
  if (endpoint.bodyKind === undefined) return { type: 'application/json', payload: JSON.stringify(body) }
  if (endpoint.bodyKind === 'csv') return { type: 'text/csv', payload: Buffer.from(body as Uint8Array) }
  if (endpoint.bodyKind === 'evidence') return { type: 'application/octet-stream', payload: Buffer.from(body as Uint8Array) }
  const form = new FormData()
  for (const [name, bytes] of Object.entries(body as Record<string, Uint8Array<ArrayBuffer>>))
    form.append(name, new Blob([bytes]))
  const encoded = new Response(form)
  return { type: encoded.headers.get('content-type') ?? '', payload: Buffer.from(await encoded.arrayBuffer()) }
}
