import { signIn, signOut, whoAmI } from '@glandkeeper/contract/people'
import { expect, it } from 'vitest'
import { aServer, type TestServer } from '../../testing/a-server.ts'
import { hashPassword } from '../features/people/index.ts'

const password = 'red lead and oil'

/** The same server, asked over http and, as a proxy in front says, over https. */
async function aServerOverBoth(): Promise<TestServer> {
  const server = await aServer({ behindProxy: true })
  const passwordHash = await hashPassword(password)
  await server.store.write((write) => write.person.update({ where: { signInName: 'fitter' }, data: { passwordHash } }))
  return server
}

const over = (scheme: 'http' | 'https', cookie?: string) => ({
  headers: { 'x-forwarded-proto': scheme, ...(cookie && { cookie }) },
})

async function cookieOver({ app }: TestServer, scheme: 'http' | 'https') {
  const payload = { signInName: 'fitter', password }
  const answer = await app.inject({ method: 'POST', url: signIn.path, payload, ...over(scheme) })
  const { name, value, ...rest } = answer.cookies[0]!
  return { name, sent: `${name}=${encodeURIComponent(value)}`, ...rest }
}

const nameBehind = async ({ app }: TestServer, scheme: 'http' | 'https', cookie: string) =>
  (await app.inject({ method: 'GET', url: whoAmI.path, ...over(scheme, cookie) })).json<{ person: { name: string } | null }>()
    .person?.name

it('over https the cookie keeps to https, and stands in no way of a sign-in over http afterwards', async () => {
  const server = await aServerOverBoth()
  const [https, http] = [await cookieOver(server, 'https'), await cookieOver(server, 'http')]
  expect(https).toMatchObject({ name: '__Host-glandkeeper', secure: true, path: '/' })
  expect(http.name).toBe('glandkeeper')
  expect(http.secure).toBeUndefined()
  expect(await nameBehind(server, 'https', https.sent)).toBe('The fitter')
  expect(await nameBehind(server, 'http', http.sent)).toBe('The fitter')
})

it('over https a cookie that came over http in the clear is not taken', async () => {
  const server = await aServerOverBoth()
  expect(await nameBehind(server, 'https', (await cookieOver(server, 'http')).sent)).toBeUndefined()
})

it('signing out over https takes the cookie away in a form that browsers heed, and ends the session', async () => {
  const server = await aServerOverBoth()
  const { sent } = await cookieOver(server, 'https')
  const { cookies } = await server.app.inject({ method: 'DELETE', url: signOut.path, ...over('https', sent) })
  expect(cookies[0]).toMatchObject({ name: '__Host-glandkeeper', value: '', secure: true, path: '/' })
  expect(await nameBehind(server, 'https', sent)).toBeUndefined()
})
