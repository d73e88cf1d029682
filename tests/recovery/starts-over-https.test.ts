import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import https from 'node:https'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { expect, it, onTestFinished } from 'vitest'

const root = path.resolve(import.meta.dirname, '../..')
const main = path.join(root, 'apps/server/dist/main.js')
/** A start that should have been refused, and was not, runs on; the test cannot end it while it waits. */
const MOST_MILLISECONDS = 15_000

function aFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-https-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

const environment = (folder: string, settings: Record<string, string>) => ({
  ...process.env,
  GLANDKEEPER_DATA: folder,
  GLANDKEEPER_DEMO: 'off',
  PORT: '0',
  DATABASE_URL: undefined,
  ...settings,
})

/** The built server as a process of its own, with all it said until it was ready. */
function started(folder: string, settings: Record<string, string>): Promise<{ child: ChildProcess; said: string }> {
  const child = spawn(process.execPath, [main], { env: environment(folder, settings), stdio: ['ignore', 'pipe', 'pipe'] })
  onTestFinished(() => void child.kill('SIGKILL'))
  return new Promise((resolve, reject) => {
    let said = ''
    const hear = (text: Buffer) => {
      said += String(text)
      if (/ready at \S+/.test(said)) resolve({ child, said })
    }
    child.stdout.on('data', hear)
    child.stderr.on('data', hear)
    child.once('exit', () => reject(new Error(`the server ended: ${said}`)))
  })
}

/** Signs in as a browser that trusts this certificate would. */
function signIn(said: string, ca: string): Promise<{ status: number | undefined; cookie: string }> {
  const url = new URL('/api/session', /ready at (\S+)/.exec(said)![1])
  const body = JSON.stringify({ signInName: 'planner', password: /sign in as planner with (\S+)/.exec(said)![1] })
  return new Promise((resolve, reject) => {
    const request = https.request(
      url,
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
  const selfMade = await started(folder, { GLANDKEEPER_HTTPS: 'self-made' })
  expect(selfMade.said).toMatch(/made a certificate of this machine's own, for trial/)
  expect(selfMade.said).toMatch(/only this machine gets to it: HOST=0\.0\.0\.0/)
  expect(selfMade.said).toMatch(/ready at https:/)
  expect(await signIn(selfMade.said, readFileSync(cert, 'utf8'))).toMatchObject({
    status: 201,
    cookie: expect.stringMatching(/; HttpOnly; Secure;/),
  })

  const given = await started(aFolder(), { GLANDKEEPER_HTTPS: 'given', GLANDKEEPER_CERT: cert, GLANDKEEPER_KEY: key })
  expect(given.said).not.toMatch(/for trial/)
  expect((await signIn(given.said, readFileSync(cert, 'utf8'))).status).toBe(201)
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
  const { status, stderr } = spawnSync(process.execPath, [path.join(root, 'scripts/start.mjs'), ...options], {
    encoding: 'utf8',
    timeout: MOST_MILLISECONDS,
  })
  expect([status, stderr]).toEqual([2, expect.stringContaining(words)])
})
