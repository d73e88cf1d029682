import { Worker } from 'node:worker_threads'
import type { LabelSize } from '@glandkeeper/contract/labels'
import type { Label } from './sheets.ts'

export interface PrintJob {
  readonly labels: readonly Label[]
  readonly size: LabelSize
}

/** Under a test runner the sources run and the worker is the built one. */
const workerFile = import.meta.url.endsWith('.ts')
  ? new URL('../../../dist/features/labels/labels-worker.js', import.meta.url)
  : new URL('./labels-worker.js', import.meta.url)

type Printer = (job: PrintJob) => Promise<Uint8Array<ArrayBuffer>>

/** Prints one job after the other, in a thread: five hundred codes take seconds, and no entry may wait for them. */
export function labelPrinter(): Printer {
  let before: Promise<unknown> = Promise.resolve()
  return (job) => {
    const printed = before.then(() => printInThread(job))
    before = printed.catch(() => {})
    return printed
  }
}

function printInThread(job: PrintJob): Promise<Uint8Array<ArrayBuffer>> {
  return new Promise((resolve, reject) => {
    // Without the flags of this process: a test runner's would send the built worker to sources it cannot read.
    const worker = new Worker(workerFile, { workerData: job, execArgv: [] })
    worker.once('message', resolve)
    worker.once('error', reject)
    worker.once('exit', () => reject(new Error('the printing thread ended without a sheet')))
  })
}
