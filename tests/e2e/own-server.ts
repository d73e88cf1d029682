import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'

const main = path.resolve(import.meta.dirname, '../../apps/server/dist/main.js')

/** A server of the test's own on a port and data folder of its own, that may be killed and started again. */
export class OwnServer {
  readonly address: string
  readonly folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-killed-'))
  readonly #port: number
  #process: ChildProcess | null = null
  #kills = 0

  constructor(port: number) {
    this.#port = port
    this.address = `http://127.0.0.1:${port}`
  }

  async start(): Promise<void> {
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

async function isUp(address: string): Promise<boolean> {
  try {
    return (await fetch(`${address}/api/health`)).ok
  } catch {
    return false
  }
}
