import { benchEndpoint } from '@glandkeeper/bench/calculator'
import { calculators } from '@glandkeeper/bench/calculators'
import type { Endpoint } from '@glandkeeper/contract/endpoint'
import { endpoints } from '@glandkeeper/contract/endpoints'
import { roles } from '@glandkeeper/contract/roles'
import type { InjectOptions } from 'fastify'
import { describe, expect, it } from 'vitest'
import { aServer, type TestServer } from '../testing/a-server.ts'

/** An address of each endpoint that exists as an address, whatever it then says about its parameters. */
const addressOf = (path: string) =>
  path
    .replace(':importId', '019a0000-0000-7000-8000-000000000000')
    .replace(':personId', '019a0000-0000-7000-8000-000000000000')
    .replace(':code', 'BH')
    .replace(':tag', 'NO-1')

const benchEndpoints = calculators.map((calculator): Endpoint => benchEndpoint(calculator))

/** On one server as many as keep a fault easy to find; who signs out takes the session of the others along. */
const ENDPOINTS_OF_A_TEST = 20
const alone: readonly string[] = ['signOut']
const together = Object.keys(endpoints).filter((name) => !alone.includes(name))
const portions = [
  ...alone.map((name) => [name]),
  ...Array.from({ length: Math.ceil(together.length / ENDPOINTS_OF_A_TEST) }, (_, index) =>
    together.slice(index * ENDPOINTS_OF_A_TEST, (index + 1) * ENDPOINTS_OF_A_TEST),
  ),
]

describe('every endpoint, called by nobody and by each role', () => {
  for (const names of portions) {
    it(`lets in who the contract says and nobody else: ${names.join(', ')}`, async () => {
      const server = await aServer()
      for (const name of names) await expectAccess(server, endpoints[name as keyof typeof endpoints])
    })
  }

  it('every calculator lets in who is signed in and nobody else', async () => {
    const server = await aServer()
    for (const endpoint of benchEndpoints) await expectAccess(server, endpoint)
  })
})

async function expectAccess(server: TestServer, endpoint: Endpoint): Promise<void> {
  const ask = async (cookie: string | null) => {
    const request: InjectOptions = {
      method: endpoint.method,
      url: addressOf(endpoint.path),
      headers: cookie === null ? {} : { cookie },
    }
    return server.app.inject(request)
  }
  const stranger = await ask(null)
  expect([endpoint.path, stranger.statusCode === 401]).toEqual([endpoint.path, endpoint.who !== 'anyone'])
  for (const role of roles) {
    const answer = await ask(server.cookieOf(role))
    const allowed = endpoint.who === 'anyone' || endpoint.who.includes(role)
    expect([endpoint.path, role, answer.statusCode === 403]).toEqual([endpoint.path, role, !allowed])
    if (!allowed) expect(answer.json()).toMatchObject({ code: 'person/not-allowed' })
  }
}

it('the server has a route for every endpoint of the contract and no other under /api', async () => {
  const server = await aServer()
  const served = server.app
    .printRoutes({ commonPrefix: false, includeHooks: false })
    .split('\n')
    .flatMap((line) => /\((.*)\)/.exec(line)?.[1]?.split(', ') ?? [])
    .filter((method) => !['HEAD', 'OPTIONS'].includes(method))
  const all: readonly Endpoint[] = [...Object.values(endpoints), ...benchEndpoints]
  expect(served.length).toBe(all.length)
  for (const { method, path } of all) expect([path, server.app.hasRoute({ method, url: path })]).toEqual([path, true])
})

it('a page of another site cannot act with the cookie of this one', async () => {
  const server = await aServer()
  const headers = { cookie: server.cookieOf('fitter'), origin: 'https://elsewhere.example', host: 'mill.example' }
  const answer = await server.app.inject({ method: 'DELETE', url: '/api/session', headers })
  expect(answer.json()).toMatchObject({ status: 403, code: 'request/foreign-origin' })
  const own = await server.app.inject({
    method: 'DELETE',
    url: '/api/session',
    headers: { ...headers, origin: 'http://mill.example' },
  })
  expect(own.statusCode).toBe(200)
})

it('an address that cannot be read is answered as a problem too', async () => {
  const server = await aServer()
  const answer = await server.app.inject({ method: 'GET', url: '/api/valves/%', headers: { cookie: server.cookieOf('fitter') } })
  expect(answer.headers['content-type']).toContain('application/problem+json')
  expect(answer.json()).toMatchObject({ status: 400, code: 'request/malformed' })
})
