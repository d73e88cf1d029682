import { Worker } from 'node:worker_threads'

/**
 * Starts a worker from the file that stands beside the caller, as `new URL('./plan-worker.js', import.meta.url)`.
 * Under a test runner the sources run, and the worker is the built one all the same.
 */
export function startWorker(file: URL, workerData: unknown): Worker {
  const built = new URL(file.href.replace('/apps/server/src/', '/apps/server/dist/'))
  // Without the flags of this process: a test runner's would send the built worker to sources it cannot read.
  return new Worker(built, { workerData, execArgv: [] })
}
