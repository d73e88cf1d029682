import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'

const REGISTER = 'glandkeeper.db'
const main = path.resolve(import.meta.dirname, '../../apps/server/dist/main.js')

/** A server of the test's own on a port and data folder of its own, that may be killed and started again. */
export class OwnServer {
  readonly address: string
  readonly folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-killed-'))
  readonly #port: number
  readonly #copyOf: string | undefined
  #process: ChildProcess | null = null
  #kills = 0

  /** With a data folder to begin with a copy of: loading the demo plant anew takes longer than most tests. */
  constructor(port: number, copyOf?: string) {
    this.#port = port
    this.#copyOf = copyOf
    this.address = `http://127.0.0.1:${port}`
  }

  async start(): Promise<void> {
    if (this.#copyOf !== undefined && this.#kills === 0) await copyRegister(this.#copyOf, this.folder)
    const env = {
      ...process.env,
      PORT: String(this.#port),
      GLANDKEEPER_DATA: this.folder,
      GLANDKEEPER_DEMO_PASSWORD: 'tarn-hollow',
    }
    this.#process = spawn(process.execPath, [main], { env: { ...env, DATABASE_URL: '' }, stdio: 'ignore' })
    for (let tries = 0; tries < 600; tries++) {
      if (await isUp(this.address)) return
      await new Promise((resolve) => setTimeout(resolve, 100))
    }
    throw new Error('the server did not start')
  }

  /** As a power cut does: nothing is closed, nothing said. */
  async kill(): Promise<void> {
    const dying = this.#process
    if (!dying || dying.exitCode !== null) return
    const gone = new Promise((resolve) => dying.once('exit', resolve))
    dying.kill('SIGKILL')
    await gone
    this.#kills += 1
  }

  get kills(): number {
    return this.#kills
  }

  async end(): Promise<void> {
    await this.kill()
    rmSync(this.folder, { recursive: true, force: true })
  }
}

/** While its server runs. */
async function copyRegister(from: string, to: string): Promise<void> {
  const register = new Database(path.join(from, REGISTER), { readonly: true })
  await register.backup(path.join(to, REGISTER))
  register.close()
}

async function isUp(address: string): Promise<boolean> {
  try {
    return (await fetch(`${address}/api/health`)).ok
  } catch {
    return false
  }
}
