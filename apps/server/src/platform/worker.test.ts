import { getPriority } from 'node:os'
import { expect, it, onTestFinished, vi } from 'vitest'
import { startJob } from './worker.ts'

const doing = new URL('./worker.js', import.meta.url).href.replace('/apps/server/src/', '/apps/server/dist/')
/** A worker of its own for each test, so that none waits from the test before. */
const aWorker = (name: string) =>
  new URL(
    `data:text/javascript,${encodeURIComponent(`
      // ${name}
      import { readlinkSync } from 'node:fs'
      import { getPriority } from 'node:os'
      import { threadId } from 'node:worker_threads'
      import { doJobs } from '${doing}'
      doJobs(async (asked, say) => {
        if (asked === 'break') throw new Error('it broke')
        if (asked === 'how urgent') return getPriority(Number(readlinkSync('/proc/thread-self').split('/').at(-1)))
        if (asked !== 'go on for ever') return { threadId }
        say(0.5)
        await new Promise(() => {})
      })
    `)}`,
  )
const threadOf = (worker: URL) => startJob<{ threadId: number }>(worker, 'which thread').made

it('gives the next job to the thread that waits, and two at once to two', async () => {
  const worker = aWorker('waits')
  const first = await threadOf(worker)
  expect(first?.threadId).toBeGreaterThan(0)
  const both = await Promise.all([threadOf(worker), threadOf(worker)])
  expect(both[0]).toEqual(first)
  expect(both[1]).not.toEqual(first)
})

it.runIf(process.platform === 'linux')('goes behind whoever answers requests', async () => {
  const own = getPriority()
  expect(await startJob<number>(aWorker('steps back'), 'how urgent').made).toBeGreaterThan(own)
  expect(getPriority()).toBe(own)
})

it('tells who asked what broke, and does the next job in a new thread', async () => {
  const worker = aWorker('breaks')
  const first = await threadOf(worker)
  await expect(startJob(worker, 'break').made).rejects.toThrow('it broke')
  const next = await threadOf(worker)
  expect(next?.threadId).toBeGreaterThan(first?.threadId ?? Infinity)
})

it('ends a job that is stopped with nothing made, and leaves a thread alone that has gone on to another', async () => {
  const worker = aWorker('stops')
  const over = startJob<{ threadId: number }>(worker, 'which thread')
  const first = await over.made
  const shares: number[] = []
  const endless = startJob(worker, 'go on for ever', (share) => shares.push(share))
  await expect.poll(() => shares).toEqual([0.5])
  // The same thread, for another job now.
  await over.stop()
  expect(await Promise.race([endless.made, Promise.resolve('it runs')])).toBe('it runs')
  expect((await threadOf(worker))?.threadId).toBeGreaterThan(first?.threadId ?? Infinity)
  await endless.stop()
  expect(await endless.made).toBeNull()
})

it('stops a job that has been done, but has not been heard of, without waiting for ever', async () => {
  const worker = aWorker('stops late')
  const first = await threadOf(worker)
  const late = startJob(worker, 'which thread')
  // Nothing is heard while this thread sleeps.
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 200)
  await late.stop()
  expect(await late.made).toBeNull()
  expect((await threadOf(worker))?.threadId).toBeGreaterThan(first?.threadId ?? Infinity)
})

it('lets a thread wait for half a minute after its last job, not after an earlier one', async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
  onTestFinished(() => void vi.useRealTimers())
  const worker = aWorker('leaves')
  const first = await threadOf(worker)
  vi.advanceTimersByTime(20_000)
  expect(await threadOf(worker)).toEqual(first)
  vi.advanceTimersByTime(20_000)
  expect(await threadOf(worker)).toEqual(first)
  vi.advanceTimersByTime(30_000)
  expect(await threadOf(worker)).not.toEqual(first)
})
