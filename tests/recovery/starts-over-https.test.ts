import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import https from 'node:https'
import path from 'node:path'
import { expect, it } from 'vitest'
import { aFolder, aProcess, environment, main, type ServerProcess } from './a-process.ts'

/** A start that should have been refused, and was not, runs on; the test cannot end it while it waits. */
const MOST_MILLISECONDS = 15_000

/** Signs in as a browser that trusts this certificate would. */
function signIn({ url, password }: ServerProcess, ca: string): Promise<{ status: number | undefined; cookie: string }> {
  const body = JSON.stringify({ signInName: 'planner', password })
  return new Promise((resolve, reject) => {
    const request = https.request(
      new URL('/api/session', url),
      { method: 'POST', ca, servername: 'localhost', headers: { 'content-type': 'application/json' } },
      (answer) => {
        answer.resume()
        resolve({ status: answer.statusCode, cookie: answer.headers['set-cookie']?.[0] ?? '' })
      },
    )
    request.once('error', reject)
    request.end(body)
  })
}

it('with a certificate it makes itself, and as given: the cookie of a sign-in then keeps to https', async () => {
  const folder = aFolder()
  const [cert, key] = ['certificate.pem', 'certificate-key.pem'].map((name) => path.join(folder, name)) as [string, string]
  const selfMade = await aProcess(folder, { GLANDKEEPER_HTTPS: 'self-made' })
  expect(selfMade.said).toMatch(/made a certificate of this machine's own, for trial/)
  expect(selfMade.said).toMatch(/only this machine gets to it: HOST=0\.0\.0\.0/)
  expect(selfMade.said).toMatch(/ready at https:/)
  expect(await signIn(selfMade, readFileSync(cert, 'utf8'))).toMatchObject({
    status: 201,
    cookie: expect.stringMatching(/; HttpOnly; Secure;/),
  })

  const given = await aProcess(aFolder(), { GLANDKEEPER_HTTPS: 'given', GLANDKEEPER_CERT: cert, GLANDKEEPER_KEY: key })
  expect(given.said).not.toMatch(/for trial/)
  expect((await signIn(given, readFileSync(cert, 'utf8'))).status).toBe(201)
}, 60_000)

it('with a bad one it says what is wrong, does not start, and makes no register', () => {
  const folder = aFolder()
  const bad = path.join(folder, 'bad.pem')
  writeFileSync(bad, 'nonsense')
  const start = (settings: Record<string, string>) => {
    const { status, stderr } = spawnSync(process.execPath, [main], {
      env: environment(folder, settings),
      encoding: 'utf8',
      timeout: MOST_MILLISECONDS,
    })
    expect([status, existsSync(path.join(folder, 'glandkeeper.db'))]).toEqual([1, false])
    return stderr
  }
  expect(start({ GLANDKEEPER_HTTPS: 'given', GLANDKEEPER_CERT: bad, GLANDKEEPER_KEY: bad })).toContain(
    'bad.pem holds no certificate',
  )
  expect(start({ GLANDKEEPER_HTTPS: 'given', GLANDKEEPER_CERT: bad })).toContain('needs both')
  expect(start({ GLANDKEEPER_CERT: bad, GLANDKEEPER_KEY: bad })).toContain('are for GLANDKEEPER_HTTPS=given')
}, 60_000)

it.each([
  [['--https', '--cert', 'mill.crt'], '--cert and --key go together'],
  [['--cert', 'mill.crt', '--key', 'mill.key'], '--cert and --key are for --https'],
  [['--https', '--cert', '--key'], '--cert needs the name of a file'],
  [['--http'], 'not --http'],
])('npm start -- %j is refused in words: %s', (options, words) => {
  const { status, stderr } = spawnSync(
    process.execPath,
    [path.resolve(import.meta.dirname, '../../scripts/start.mjs'), ...options],
    {
      encoding: 'utf8',
      timeout: MOST_MILLISECONDS,
    },
  )
  expect([status, stderr]).toEqual([2, expect.stringContaining(words)])
})
