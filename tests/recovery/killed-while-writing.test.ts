import type { ChildProcess } from 'node:child_process'
import path from 'node:path'
import { sendEvents } from '@glandkeeper/contract/events'
import { addValve } from '@glandkeeper/contract/valves'
import { addArea } from '@glandkeeper/contract/areas'
import { startImport } from '@glandkeeper/contract/imports'
import { aReading } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { manyValvesCsv } from '@glandkeeper/fixtures/many-valves'
import { expect, it, onTestFinished } from 'vitest'
import { openStore } from '../../apps/server/src/platform/store.ts'
import { prove } from '../../apps/server/src/features/evidence/prove.ts'
import { statesThatDiffer } from '../../apps/server/src/features/glands/index.ts'
import { aFolder, aProcess } from './a-process.ts'

async function signedIn(url: string, password: string) {
  const response = await fetch(`${url}/api/session`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ signInName: 'planner', password }),
  })
  const cookie = response.headers.get('set-cookie')!.split(';')[0]!
  return (method: string, address: string, body?: unknown, contentType = 'application/json') =>
    fetch(url + address, {
      method,
      headers: { cookie, 'content-type': contentType },
      ...(body !== undefined && { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    })
}

async function killed(child: ChildProcess): Promise<void> {
  const ended = new Promise((resolve) => child.once('exit', resolve))
  child.removeAllListeners('exit')
  child.once('exit', () => {})
  child.kill('SIGKILL')
  await Promise.race([ended, new Promise((resolve) => setTimeout(resolve, 500))])
}

it('every entry that was acknowledged is there after the process was killed, and nothing is half-written', async () => {
  const folder = aFolder()
  const { child, url, password } = await aProcess(folder)
  const ask = await signedIn(url, password)
  await ask('POST', addArea.path, { code: 'BH', name: 'Boiler house', walkPosition: 10, level: 0 })
  const { valveId } = addValve.ok.parse(await (await ask('POST', addValve.path, aValve({ areaCode: 'BH', tag: 'BH-1' }))).json())

  const acknowledged: string[] = []
  const sending = (async () => {
    for (let count = 0; ; count += 1) {
      const events = [0, 1, 2].map((n) => aReading({ valveId, takenAt: '2026-05-01T08:00:00Z', count: count * 3 + n }))
      const { outcomes } = sendEvents.ok.parse(await (await ask('POST', sendEvents.path, { events })).json())
      acknowledged.push(...outcomes.flatMap((outcome) => (outcome.outcome === 'accepted' ? [outcome.id] : [])))
    }
  })().catch(() => {})
  while (acknowledged.length < 30) await new Promise((resolve) => setTimeout(resolve, 20))
  await killed(child)
  await sending

  const store = await openStore(`file:${path.join(folder, 'glandkeeper.db')}`)
  onTestFinished(() => store.close())
  const kept = new Set((await store.read.event.findMany({ select: { id: true } })).map((event) => event.id))
  expect(acknowledged.filter((id) => !kept.has(id))).toEqual([])
  expect(kept.size).toBeGreaterThanOrEqual(30)
  const site = (await store.read.site.findFirst())!
  expect(await prove(store, site.id, () => {})).toMatchObject({ whole: true, events: kept.size })
  const differing = []
  for await (const difference of statesThatDiffer(store.read, site.id, new Date())) differing.push(difference)
  expect(differing).toEqual([])
})

it('an import that was being written when the process was killed is finished by the next start', async () => {
  const folder = aFolder()
  const first = await aProcess(folder)
  const ask = await signedIn(first.url, first.password)
  const file = [...manyValvesCsv(3000)].join('')
  const { importId } = startImport.ok.parse(
    await (await ask('POST', `${startImport.path}?kind=valves&fileName=many.csv`, file, 'text/csv')).json(),
  )
  const step = async () => (await (await ask('GET', `/api/imports/${importId}`)).json()) as { step: string; doneCount: number }
  while ((await step()).step === 'checking') await new Promise((resolve) => setTimeout(resolve, 50))
  await ask('POST', `/api/imports/${importId}/apply`, { mode: 'good rows' })
  while ((await step()).doneCount < 400) await new Promise((resolve) => setTimeout(resolve, 5))
  await killed(first.child)

  const second = await aProcess(folder)
  const store = await openStore(`file:${path.join(folder, 'glandkeeper.db')}`)
  onTestFinished(() => store.close())
  await expect
    .poll(async () => (await store.read.importRun.findFirst({ select: { step: true } }))?.step, { timeout: 30_000 })
    .toBe('done')
  expect(await store.read.valve.count()).toBe(3000)
  expect(await store.read.valveState.count()).toBe(3000)
  await killed(second.child)
}, 60_000)

it('a second server on the same data folder is refused, in words', async () => {
  const folder = aFolder()
  const { child } = await aProcess(folder)
  await expect(aProcess(folder)).rejects.toThrow('another server is using')
  await killed(child)
})
