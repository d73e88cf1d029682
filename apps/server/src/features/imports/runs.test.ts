import { setImmediate as nextTurn } from 'node:timers/promises'
import { applyImport, cancelImport, type ImportRun, showImport } from '@glandkeeper/contract/imports'
import { changeValve, showValve } from '@glandkeeper/contract/valves'
import { describe, expect, it, onTestFinished } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { applied, checked } from '../../../testing/import-file.ts'
import { Refusal } from '../../platform/problem.ts'
import { ImportRuns } from './index.ts'

const HEADINGS = 'tag,area,service,phase,nose length [mm],stud thread'
const row = (n: number) => `B-${n},BH,steam,steam,20,M12`
const rows = (count: number, from = 0) => Array.from({ length: count }, (_, n) => row(from + n))
const fileOf = (...lines: string[]) => [HEADINGS, ...lines].join('\n')

const shown = (server: TestServer, importId: string) => server.expectOk('planner', showImport, { params: { importId } })
const apply = (server: TestServer, importId: string, mode: 'whole file' | 'good rows') =>
  server.expectOk('planner', applyImport, { params: { importId }, body: { mode } })

/** Runs of a server of their own on the same register, with something that happens before each of its writes. */
function runsWith(server: TestServer, before: (nth: number) => Promise<void>, log: unknown[] = []): ImportRuns {
  let nth = 0
  const write: TestServer['store']['write'] = async (work) => {
    nth += 1
    await before(nth)
    return server.store.write(work)
  }
  const runs = new ImportRuns({ ...server.store, write }, () => server.now, { error: (error: unknown) => log.push(error) })
  onTestFinished(() => runs.stop())
  return runs
}

/** Brings a run to the step `writing` with nobody at work at it. */
async function toWriting(server: TestServer, { importId }: ImportRun, mode: string): Promise<void> {
  await server.store.write((write) => write.importRun.update({ where: { id: importId }, data: { step: 'writing', mode } }))
}

async function changeNose(server: TestServer, tag: string, noseLength: number): Promise<void> {
  const { valve } = await server.expectOk('planner', showValve, { params: { tag } })
  const { valveId: _id, areaName: _name, retiredAt: _at, revision, ...input } = valve
  const changed = { ...input, gland: { ...input.gland, noseLength } } as typeof input
  await server.expectOk('planner', changeValve, { params: { tag }, body: { revision, valve: changed } })
}

const retire = (server: TestServer, tag: string) =>
  server.store.write((write) => write.valve.updateMany({ where: { tag }, data: { retiredAt: server.now } }))

describe('a change saved meanwhile', () => {
  const other = 'tag,area,service,phase,description\nB-0,BH,steam,steam,Feed pump 2'

  it('between check and write stays, beside what the file says', async () => {
    const server = await aServer()
    await applied(server, await checked(server, 'valves', fileOf(row(0))), 'whole file')
    const run = await checked(server, 'valves', other)
    await changeNose(server, 'B-0', 25)
    expect(await applied(server, run, 'whole file')).toMatchObject({ step: 'done', detail: '' })
    const { valve } = await server.expectOk('planner', showValve, { params: { tag: 'B-0' } })
    expect(valve).toMatchObject({ revision: 3, description: 'Feed pump 2', gland: { noseLength: 25 } })
  })

  it.each(['whole file', 'good rows'])('between two steps of the writing of %s stays too', async (mode) => {
    const server = await aServer()
    await applied(server, await checked(server, 'valves', fileOf(row(0))), 'whole file')
    const run = await checked(server, 'valves', other)
    await toWriting(server, run, mode)
    const runs = runsWith(server, async (nth) => void (nth === 1 && (await changeNose(server, 'B-0', 25))))
    runs.write(run.importId)
    await runs.idle()
    const { valve } = await server.expectOk('planner', showValve, { params: { tag: 'B-0' } })
    expect(valve).toMatchObject({ revision: 3, description: 'Feed pump 2', gland: { noseLength: 25 } })
  })
})

describe('a whole file', () => {
  const nothing = { step: 'checked', detail: 'the register changed since the check; nothing was written', badCount: 1 }

  it.each([20, 1001])('of %i rows is not begun when a row has become bad since the check', async (count) => {
    const server = await aServer()
    const last = fileOf(row(count - 1))
    await applied(server, await checked(server, 'valves', last), 'whole file')
    const run = await checked(server, 'valves', fileOf(...rows(count)))
    await retire(server, `B-${count - 1}`)
    expect(await applied(server, run, 'whole file')).toMatchObject({ ...nothing, rowCount: count, doneCount: 0 })
    expect(await server.store.read.valve.count()).toBe(1)
    expect(await applied(server, run, 'good rows')).toMatchObject({ step: 'done', detail: '', doneCount: count - 1 })
  })

  it('is judged again in the transaction that writes it', async () => {
    const server = await aServer()
    await applied(server, await checked(server, 'valves', fileOf(row(399))), 'whole file')
    const run = await checked(server, 'valves', fileOf(...rows(400)))
    await toWriting(server, run, 'whole file')
    const runs = runsWith(server, async (nth) => void (nth === 1 && (await retire(server, 'B-399'))))
    runs.write(run.importId)
    await runs.idle()
    expect(await shown(server, run.importId)).toMatchObject(nothing)
    expect(await server.store.read.valve.count()).toBe(1)
  })

  it('shows all of its rows to others at once, and lets them read meanwhile', async () => {
    const server = await aServer()
    const run = await checked(server, 'valves', fileOf(...rows(800)))
    await apply(server, run.importId, 'whole file')
    const seen = new Set<number>()
    const isOver = server.imports.idle().then(() => true)
    while (!(await Promise.race([isOver, nextTurn(false)]))) seen.add(await server.store.read.valve.count())
    seen.add(await server.store.read.valve.count())
    expect([...seen]).toEqual([0, 800])
  })
})

describe('the next run', () => {
  it('goes on when one failed, even where its failure could not be noted', async () => {
    const server = await aServer()
    const [first, second] = [await checked(server, 'valves', fileOf(row(1))), await checked(server, 'valves', fileOf(row(2)))]
    await toWriting(server, first, 'good rows')
    await toWriting(server, second, 'good rows')
    const log: unknown[] = []
    const fails = (nth: number) => (nth <= 2 ? Promise.reject(new Error('the disk is full')) : Promise.resolve())
    const runs = runsWith(server, fails, log)
    runs.write(first.importId)
    runs.write(second.importId)
    await runs.idle()
    expect([(await shown(server, first.importId)).step, (await shown(server, second.importId)).step]).toEqual(['writing', 'done'])
    expect(log.map(String)).toEqual(['Error: the disk is full', 'Error: the disk is full'])
  })

  it('waits for a busy register and goes on', async () => {
    const server = await aServer()
    const run = await checked(server, 'valves', fileOf(row(1)))
    await toWriting(server, run, 'good rows')
    const runs = runsWith(server, (nth) => (nth <= 2 ? Promise.reject(new Refusal('store/busy')) : Promise.resolve()))
    runs.write(run.importId)
    await runs.idle()
    expect(await shown(server, run.importId)).toMatchObject({ step: 'done', doneCount: 1 })
  })
})

describe('a wish to cancel', () => {
  const ask = (server: TestServer, { importId }: ImportRun) => server.call('planner', cancelImport, { params: { importId } })

  it('that comes before the last note is kept, and the rows written are told', async () => {
    const server = await aServer()
    const run = await checked(server, 'valves', fileOf(row(1)))
    await toWriting(server, run, 'good rows')
    // The first write is the rows, the second the note that it is done.
    const runs = runsWith(server, async (nth) => void (nth === 2 && (await ask(server, run))))
    runs.write(run.importId)
    await runs.idle()
    const detail = '1 rows were written; bring the same file in again to go on'
    expect(await shown(server, run.importId)).toMatchObject({ step: 'cancelled', detail, doneCount: 1 })
  })

  it('before a whole file is written leaves nothing of it', async () => {
    const server = await aServer()
    const run = await checked(server, 'valves', fileOf(row(1)))
    await toWriting(server, run, 'whole file')
    const runs = runsWith(server, async (nth) => void (nth === 1 && (await ask(server, run))))
    runs.write(run.importId)
    await runs.idle()
    expect(await shown(server, run.importId)).toMatchObject({ step: 'cancelled', detail: 'nothing was written', doneCount: 0 })
    expect(await server.store.read.valve.count()).toBe(0)
  })

  it('that comes too late is refused, and one of an earlier step is forgotten', async () => {
    const server = await aServer()
    const run = await checked(server, 'valves', fileOf(row(1)))
    await server.store.write((write) => write.importRun.updateMany({ data: { cancelAsked: true } }))
    expect(await applied(server, run, 'good rows')).toMatchObject({ step: 'done', doneCount: 1 })
    expect(await ask(server, run)).toMatchObject({ status: 409, problem: { code: 'import/not-ready' } })
  })
})

it('a run that another server may be at is taken on where there can be no other, or when it was left alone', async () => {
  const server = await aServer()
  const run = await checked(server, 'valves', fileOf(row(1)))
  await toWriting(server, run, 'good rows')
  const stepAfterResume = async () => {
    const runs = runsWith(server, async () => {})
    await runs.resume()
    await runs.idle()
    return (await shown(server, run.importId)).step
  }
  expect(await stepAfterResume()).toBe(server.store.provider === 'sqlite' ? 'done' : 'writing')
  const touchedAt = new Date(server.now.getTime() - 61_000)
  await server.store.write((write) => write.importRun.updateMany({ data: { touchedAt } }))
  expect(await stepAfterResume()).toBe('done')
})
