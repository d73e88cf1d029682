import { startJob } from '../worker.ts'

export type Printer<Job> = (job: Job) => Promise<Uint8Array<ArrayBuffer>>

/** Prints one job after the other, in a thread: hundreds of pieces take seconds, and no entry may wait for them. */
export function printerIn(worker: URL): Printer<unknown> {
  let before: Promise<unknown> = Promise.resolve()
  return (job) => {
    const printed = before.then(async () => {
      const sheet = await startJob<Uint8Array<ArrayBuffer>>(worker, job).made
      if (sheet === null) throw new Error('the printing thread ended without a sheet')
      return sheet
    })
    before = printed.catch(() => {})
    return printed
  }
}
