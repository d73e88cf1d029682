import { listAreas } from '@glandkeeper/contract/areas'
import { signIn, signOut, whoAmI } from '@glandkeeper/contract/people'
import { expect, it } from 'vitest'
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
  expect((await server.call('nobody', signIn, { body: { signInName: 'planner', password: 'first try' } })).status).toBe(401)
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
