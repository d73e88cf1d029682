import { listAreas } from '@glandkeeper/contract/areas'
import { addPerson, changePerson, listPeople, signIn, signOut, whoAmI } from '@glandkeeper/contract/people'
import { describe, expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { hashPassword } from './index.ts'

async function aServerWithPassword() {
  const server = await aServer()
  const passwordHash = await hashPassword('red lead and oil')
  await server.store.write((write) => write.person.update({ where: { signInName: 'fitter' }, data: { passwordHash } }))
  return server
}

it('signs in by name and password, is known by the cookie, and signs out for good', async () => {
  const server = await aServerWithPassword()
  const response = await server.app.inject({
    method: 'POST',
    url: signIn.path,
    payload: { signInName: 'Fitter', password: 'red lead and oil' },
  })
  expect(response.statusCode).toBe(201)
  const { name, value, httpOnly, sameSite } = response.cookies[0] as {
    name: string
    value: string
    httpOnly: boolean
    sameSite: string
  }
  expect({ httpOnly, sameSite }).toEqual({ httpOnly: true, sameSite: 'Strict' })
  const headers = { cookie: `${name}=${encodeURIComponent(value)}` }
  const me = await server.app.inject({ method: 'GET', url: whoAmI.path, headers })
  expect(me.json()).toMatchObject({ person: { name: 'The fitter', role: 'fitter', site: { name: 'Test mill' } } })
  await server.app.inject({ method: 'DELETE', url: signOut.path, headers })
  expect((await server.app.inject({ method: 'GET', url: whoAmI.path, headers })).json()).toEqual({ person: null })
  expect((await server.app.inject({ method: 'GET', url: listAreas.path, headers })).json()).toMatchObject({
    code: 'person/not-signed-in',
  })
})

it('answers a wrong name and a wrong password alike', async () => {
  const server = await aServerWithPassword()
  const wrongName = await server.call('nobody', signIn, { body: { signInName: 'nobody', password: 'red lead and oil' } })
  const wrongPassword = await server.call('nobody', signIn, { body: { signInName: 'fitter', password: 'Red lead and oil' } })
  expect([wrongName.status, wrongPassword.status]).toEqual([401, 401])
  expect(wrongName).toMatchObject({ problem: { code: 'person/wrong-sign-in' } })
  expect(wrongPassword).toMatchObject({ problem: { code: 'person/wrong-sign-in' } })
})

it('slows down who tries many passwords', async () => {
  const server = await aServerWithPassword()
  const tries = []
  for (let n = 0; n < 11; n += 1)
    tries.push((await server.call('nobody', signIn, { body: { signInName: 'fitter', password: `guess ${n}` } })).status)
  expect(tries.at(-2)).toBe(401)
  expect(tries.at(-1)).toBe(429)
  // Others behind the same address are not held up.
  expect((await server.call('nobody', signIn, { body: { signInName: 'somebody', password: 'first try' } })).status).toBe(401)
})

it('does not let in a cookie that was made up, ran out, or belongs to somebody who left', async () => {
  const server = await aServer()
  const made = await server.app.inject({
    method: 'GET',
    url: listAreas.path,
    headers: { cookie: 'glandkeeper=token%20of%20planner.forged' },
  })
  expect(made.statusCode).toBe(401)
  await server.store.write((write) => write.session.updateMany({ data: { expiresAt: server.now } }))
  expect((await server.call('planner', listAreas)).status).toBe(401)
  await server.store.write((write) => write.session.updateMany({ data: { expiresAt: new Date(server.now.getTime() + 1000) } }))
  expect((await server.call('planner', listAreas)).status).toBe(200)
  await server.store.write((write) => write.person.update({ where: { signInName: 'planner' }, data: { retiredAt: server.now } }))
  expect((await server.call('planner', listAreas)).status).toBe(401)
})

it('slows down who tries many names from one address', async () => {
  const server = await aServer()
  const statuses = []
  for (let n = 0; n <= 120; n += 1) {
    statuses.push((await server.call('nobody', signIn, { body: { signInName: `name${n}`, password: 'guess' } })).status)
  }
  expect([statuses[119], statuses[120]]).toEqual([401, 429])
})

describe('keeping the people of a site', () => {
  const brisk = { name: 'M. Farrow', signInName: 'M.Farrow', role: 'fitter', password: 'chalk and string' } as const

  it('adds somebody who then signs in, and whose name is taken from then on', async () => {
    const server = await aServer()
    const added = await server.expectOk('planner', addPerson, { body: brisk })
    expect(added).toMatchObject({ signInName: 'm.farrow', role: 'fitter', leftAt: null })
    expect((await server.call('nobody', signIn, { body: { signInName: 'm.farrow', password: brisk.password } })).status).toBe(201)
    expect(await server.call('engineer', addPerson, { body: brisk })).toMatchObject({
      status: 409,
      problem: { code: 'person/name-taken' },
    })
    const { people } = await server.expectOk('engineer', listPeople)
    expect(people.map((person) => person.name)).toEqual(['M. Farrow', 'The engineer', 'The fitter', 'The planner'])
  })

  it('ends the sessions of who leaves or gets a new password, and never shows a password or its hash', async () => {
    const server = await aServer()
    const change = { name: 'The fitter', role: 'fitter', hasLeft: false, password: 'a new long one' } as const
    await server.expectOk('planner', changePerson, { params: { personId: server.personIds.fitter }, body: change })
    expect((await server.call('fitter', listAreas)).status).toBe(401)
    const gone = { name: 'The engineer', role: 'engineer', hasLeft: true } as const
    await server.expectOk('planner', changePerson, { params: { personId: server.personIds.engineer }, body: gone })
    expect((await server.call('engineer', listAreas)).status).toBe(401)
    const notes = await server.store.read.registerChange.findMany({ where: { subject: 'person' } })
    expect(notes).toHaveLength(2)
    expect(JSON.stringify(notes)).not.toContain('a new long one')
    expect(JSON.stringify(notes)).not.toContain('argon2')
  })

  it('leaves somebody who keeps the register', async () => {
    const server = await aServer()
    const leave = (role: 'planner' | 'engineer') => ({
      params: { personId: server.personIds[role] },
      body: { name: role, role, hasLeft: true },
    })
    await server.expectOk('planner', changePerson, leave('engineer'))
    expect(await server.call('planner', changePerson, leave('planner'))).toMatchObject({
      status: 409,
      problem: { code: 'person/last-keeper' },
    })
    expect((await server.call('planner', listAreas)).status).toBe(200)
  })

  it('reaches nobody of another site', async () => {
    const server = await aServer()
    await server.store.write(async (write) => {
      await write.site.create({ data: { id: 'other', name: 'Other', timeZone: 'Europe/London', createdAt: server.now } })
      await write.person.update({ where: { signInName: 'fitter' }, data: { siteId: 'other' } })
    })
    const body = { name: 'x', role: 'fitter', hasLeft: true } as const
    expect(await server.call('planner', changePerson, { params: { personId: server.personIds.fitter }, body })).toMatchObject({
      status: 404,
    })
    expect((await server.expectOk('planner', listPeople)).people).toHaveLength(2)
  })
})
