import { startWorker } from '../worker.ts'

export type Printer<Job> = (job: Job) => Promise<Uint8Array<ArrayBuffer>>

/** Prints one job after the other, each in a thread: hundreds of pieces take seconds, and no entry may wait for them. */
export function printerIn(worker: URL): Printer<unknown> {
  let before: Promise<unknown> = Promise.resolve()
  return (job) => {
    const printed = before.then(() => printInThread(worker, job))
    before = printed.catch(() => {})
    return printed
  }
}

function printInThread(file: URL, job: unknown): ReturnType<Printer<unknown>> {
  return new Promise((resolve, reject) => {
    const worker = startWorker(file, job)
    worker.once('message', resolve)
    worker.once('error', reject)
    worker.once('exit', () => reject(new Error('the printing thread ended without a sheet')))
  })
}
