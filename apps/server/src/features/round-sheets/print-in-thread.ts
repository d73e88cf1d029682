import { Worker } from 'node:worker_threads'
import type { RoundSheet } from './known.ts'

/** Under a test runner the sources run and the worker is the built one. */
const workerFile = import.meta.url.endsWith('.ts')
  ? new URL('../../../dist/features/round-sheets/sheet-worker.js', import.meta.url)
  : new URL('./sheet-worker.js', import.meta.url)

type Printer = (sheet: RoundSheet) => Promise<Uint8Array<ArrayBuffer>>

/** Prints one sheet after the other, in a thread: two hundred stops take a second, and no entry may wait for them. */
export function sheetPrinter(): Printer {
  let before: Promise<unknown> = Promise.resolve()
  return (sheet) => {
    const printed = before.then(() => printInThread(sheet))
    before = printed.catch(() => {})
    return printed
  }
}

function printInThread(sheet: RoundSheet): Promise<Uint8Array<ArrayBuffer>> {
  return new Promise((resolve, reject) => {
    // Without the flags of this process: a test runner's would send the built worker to sources it cannot read.
    const worker = new Worker(workerFile, { workerData: sheet, execArgv: [] })
    worker.once('message', resolve)
    worker.once('error', reject)
    worker.once('exit', () => reject(new Error('the printing thread ended without a sheet')))
  })
}
