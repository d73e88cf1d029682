import { badRowsOfImport, type ImportKind, type ImportRun } from '@glandkeeper/contract/imports'
import { changeValve, retireValve, showValve } from '@glandkeeper/contract/valves'
import { describe, expect, it } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { applied, checked } from '../../../testing/import-file.ts'

const VALVES = 'tag,area,service,phase,box bore [mm],stem diameter [mm],stud thread\nBH-1,BH,steam,steam,45,28,M12\n'

const brought = async (server: TestServer, kind: ImportKind, file: string) =>
  applied(server, await checked(server, kind, file), 'good rows')

async function badRowsOf(server: TestServer, run: ImportRun): Promise<string> {
  return server.expectOk('planner', badRowsOfImport, { params: { importId: run.importId } })
}

async function inputOf(server: TestServer) {
  const { valve } = await server.expectOk('planner', showValve, { params: { tag: 'BH-1' } })
  const { valveId: _id, areaName: _name, revision, retiredAt: _at, ...input } = valve
  return { revision, input }
}

it('two nips of one day are two entries, though the first was mended afterwards', async () => {
  const server = await aServer()
  await brought(server, 'valves', VALVES)
  const run = await checked(server, 'history', 'tag,date,what,turns\nBH-1,2026-03-02,nip,O.5\nBH-1,2026-03-02,nip,0.5')
  expect(run).toMatchObject({ goodCount: 1, badCount: 1 })
  await applied(server, run, 'good rows')
  const mended = (await badRowsOf(server, run)).replace('O.5', '0.5')
  expect(mended).toContain('BH-1,2026-03-02,nip,0.5,1,')
  expect(await brought(server, 'history', mended)).toMatchObject({ step: 'done', doneCount: 1, alreadyCount: 0 })
  expect(await server.store.read.event.count({ where: { kind: 'gland.nipped' } })).toBe(2)
  expect(await brought(server, 'history', mended)).toMatchObject({ doneCount: 1, alreadyCount: 1 })
})

it('which of several alike a row is may be said once in a file, and is counted from 1', async () => {
  const server = await aServer()
  await brought(server, 'valves', VALVES)
  const row = 'BH-1,2026-03-02,nip,0.5'
  const file = ['tag,date,what,turns,which of several alike', `${row},2`, `${row},`, `${row},`, `${row},2`, `${row},0`].join('\n')
  const run = await checked(server, 'history', file)
  expect(run.faults.map(({ row: line, column, detail }) => [line, column, detail])).toEqual([
    [5, 'which of several alike', 'row 2 is number 2 of these already'],
    [6, 'which of several alike', 'count from 1'],
  ])
  expect(await applied(server, run, 'good rows')).toMatchObject({ doneCount: 3 })
  expect(await server.store.read.event.count()).toBe(3)
})

it('a history is the same history under a new tag', async () => {
  const server = await aServer()
  await brought(server, 'valves', VALVES)
  const history = (tag: string) =>
    `tag,date,what,gap left,turns\n${tag},2026-03-01,reading,9,\n${tag},2026-03-02,nip,,0.5\n${tag},2026-03-02,nip,,0.5`
  await brought(server, 'history', history('BH-1'))
  const { revision, input } = await inputOf(server)
  const body = { revision, valve: { ...input, tag: 'BH-1A' } }
  await server.expectOk('planner', changeValve, { params: { tag: 'BH-1' }, body })
  expect(await brought(server, 'history', history('BH-1A'))).toMatchObject({ step: 'done', doneCount: 3, alreadyCount: 3 })
  expect(await server.store.read.event.count()).toBe(3)
})

it('a row of a retired valve is a fault, in both kinds of file', async () => {
  const server = await aServer()
  await brought(server, 'valves', VALVES)
  const { revision } = await inputOf(server)
  await server.expectOk('planner', retireValve, { params: { tag: 'BH-1' }, body: { revision, reason: 'taken out' } })
  const detail = 'this valve was retired on 2026-05-04'
  const history = await checked(server, 'history', 'tag,date,what,turns\nBH-1,2026-03-02,nip,0.5')
  expect(history.faults).toEqual([{ row: 2, column: 'tag', value: 'BH-1', detail }])
  expect((await checked(server, 'valves', VALVES)).faults).toEqual([{ row: 2, column: 'tag', value: 'BH-1', detail }])
})

describe('a history', () => {
  it('becomes entries that make the state, and is the same entries when brought in again', async () => {
    const server = await aServer()
    await brought(server, 'valves', VALVES)
    const history = [
      'tag;when;what;gap left [mm];gap right [mm];turns;leak;by',
      'BH-1;2026-03-01;reading;9,5;9;;dry;M. Farrow',
      'BH-1;2026-03-02 14:30;nip;;;0,5;;',
      'BH-1;2026-03-02 14:30;nip;;;0,5;;',
    ].join('\n')
    expect(await brought(server, 'history', history)).toMatchObject({ step: 'done', doneCount: 3, alreadyCount: 0 })
    expect(await brought(server, 'history', history)).toMatchObject({ step: 'done', doneCount: 3, alreadyCount: 3 })
    const { state, timeline } = await server.expectOk('engineer', showValve, { params: { tag: 'BH-1' } })
    expect(state).toMatchObject({ gapLeft: 7.75, gapRight: 7.25, reserve: 4.25, entryCount: 3 })
    expect(timeline.at(-1)).toMatchObject({ by: 'M. Farrow', device: 'import', event: { takenAt: '2026-03-01T12:00:00.000Z' } })
  })

  it('names what it cannot understand, and a repeated row with other values', async () => {
    const server = await aServer()
    await brought(server, 'valves', VALVES)
    await brought(server, 'history', 'tag,date,what,gap left,gap right\nBH-1,2026-03-01,reading,9,9')
    const run = await checked(
      server,
      'history',
      [
        'tag,date,what,gap left,gap right,turns',
        'BH-1,2026-03-01,reading,8,9,',
        'BH-9,2026-03-02,reading,8,9,',
        'BH-1,31/03/2026,reading,8,9,',
        'BH-1,2099-01-01,reading,8,9,',
        'BH-1,2026-02-31,reading,8,9,',
        'BH-1,2026-03-03,nip,7,,0.5',
        'BH-1,2026-03-03,reading,,,',
      ].join('\n'),
    )
    expect(run.faults.map(({ row, column, detail }) => [row, column, detail])).toEqual(
      [
        [3, 'tag', 'no valve BH-9 is in the register'],
        [4, 'date', 'write the date as 2026-05-04, or 2026-05-04 14:30'],
        [5, 'date', '2099-01-01T12:00:00.000Z has not come yet'],
        [6, 'date', 'no such date'],
        [7, 'gap left', 'does not belong to this kind of entry'],
        [8, 'gap left', 'read at least one side'],
        [2, '', 'an entry of this kind and time is in the register with other values: correct it on the page of the valve'],
      ].toSorted((a, b) => Number(a[0]) - Number(b[0])),
    )
  })
})
