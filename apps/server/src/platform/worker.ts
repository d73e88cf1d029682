// oxlint-disable unicorn/require-post-message-target-origin -- a port of a thread has no origin
import { readlinkSync } from 'node:fs'
import { constants, setPriority } from 'node:os'
import { parentPort, Worker } from 'node:worker_threads'

/** What a worker says: how far it is, and at last what it made. */
type Said<Made> = { readonly share: number } | { readonly made: Made }

export interface Job<Made> {
  /** Null where it was stopped; rejects with what broke. */
  readonly made: Promise<Made | null>
  /** Ends the thread, whatever it is in the middle of. */
  readonly stop: () => Promise<void>
}

/** Loading what it needs takes a thread longer than most jobs do: one that is done waits so long for the next. */
const WAITS_MS = 30_000
/** Of each file the threads that wait, each with what ends its waiting. */
const waiting = new Map<string, Map<Worker, NodeJS.Timeout>>()

/**
 * Gives a job to a thread of the worker file beside the caller, as `new URL('./plan-worker.js', import.meta.url)`:
 * one that waits, or a new one.
 */
export function startJob<Made>(file: URL, asked: unknown, onShare: (share: number) => void = () => {}): Job<Made> {
  const worker = takeWaiting(file) ?? newWorker(file)
  let is: 'at work' | 'being stopped' | 'done' = 'at work'
  const made = new Promise<Made | null>((resolve, reject) => {
    const onExit = () => resolve(null)
    const onMessage = (said: Said<Made>) => {
      if (is !== 'at work') return
      if ('share' in said) return onShare(said.share)
      is = 'done'
      worker.off('error', reject).off('exit', onExit).off('message', onMessage)
      letWait(file, worker)
      resolve(said.made)
    }
    worker.on('error', reject).on('exit', onExit).on('message', onMessage)
  })
  worker.ref()
  worker.postMessage(asked)
  return {
    made,
    stop: async () => {
      if (is === 'done') return
      is = 'being stopped'
      await worker.terminate()
    },
  }
}

/** In a worker file: does the jobs it is given. One that throws ends the thread, and who asked is told. */
export function doJobs<Made>(work: (asked: never, say: (share: number) => void) => Promise<Made>): void {
  stepBack()
  const say = (said: Said<Made>, handOver: ArrayBuffer[] = []) => parentPort?.postMessage(said, handOver)
  parentPort?.on('message', (asked: unknown) => {
    void work(asked as never, (share) => say({ share })).then((made) =>
      say({ made }, made instanceof Uint8Array ? [made.buffer as ArrayBuffer] : []),
    )
  })
}

/** Pages go before plans where there are fewer processors than threads. Only Linux tells a thread its own number. */
function stepBack(): void {
  try {
    const thread = Number(readlinkSync('/proc/thread-self').split('/').at(-1))
    setPriority(thread, constants.priority.PRIORITY_BELOW_NORMAL)
  } catch {
    // Elsewhere all are alike.
  }
}

function newWorker(file: URL): Worker {
  // Under a test runner the sources run, and the worker is the built one all the same.
  const built = new URL(file.href.replace('/apps/server/src/', '/apps/server/dist/'))
  // Without the flags of this process: a test runner's would send the built worker to sources it cannot read.
  const worker = new Worker(built, { execArgv: [] })
  // Who asked is told; one that breaks while it waits must not take the server along.
  worker.on('error', () => waiting.get(file.href)?.delete(worker))
  return worker
}

function takeWaiting(file: URL): Worker | undefined {
  const those = waiting.get(file.href)
  for (const [worker, leaving] of those ?? []) {
    clearTimeout(leaving)
    those?.delete(worker)
    return worker
  }
  return undefined
}

function letWait(file: URL, worker: Worker): void {
  const those = waiting.get(file.href) ?? new Map<Worker, NodeJS.Timeout>()
  const leave = () => those.delete(worker) && void worker.terminate()
  waiting.set(file.href, those.set(worker, setTimeout(leave, WAITS_MS).unref()))
  // A thread that waits keeps no process alive.
  worker.unref()
}
