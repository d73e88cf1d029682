import { type ChildProcess, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { onTestFinished } from 'vitest'

export const main = path.resolve(import.meta.dirname, '../../apps/server/dist/main.js')

/** A data folder of the test's own, kept from start to start. */
export function aFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-recovery-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** An empty register on that folder, on any port that is free. */
export const environment = (folder: string, settings: Readonly<Record<string, string>> = {}) => ({
  ...process.env,
  GLANDKEEPER_DATA: folder,
  GLANDKEEPER_DEMO: 'off',
  PORT: '0',
  DATABASE_URL: undefined,
  ...settings,
})

export interface ServerProcess {
  readonly child: ChildProcess
  readonly url: string
  /** Of the planner of a register that was just made. */
  readonly password: string
  /** Everything it said until it was ready. */
  readonly said: string
}

/** The built server as a process of its own, once it is ready. Rejects with what it said when it ends instead. */
export function aProcess(folder: string, settings: Readonly<Record<string, string>> = {}): Promise<ServerProcess> {
  const child = spawn(process.execPath, [main], { env: environment(folder, settings), stdio: ['ignore', 'pipe', 'pipe'] })
  onTestFinished(() => void child.kill('SIGKILL'))
  return new Promise((resolve, reject) => {
    let said = ''
    const hear = (text: Buffer) => {
      said += String(text)
      const url = /ready at (\S+)/.exec(said)?.[1]
      if (url) resolve({ child, url, password: /sign in as planner with (\S+)/.exec(said)?.[1] ?? '', said })
    }
    child.stdout.on('data', hear)
    child.stderr.on('data', hear)
    child.once('exit', () => reject(new Error(`the server ended: ${said}`)))
  })
}
