import { addArea } from '@glandkeeper/contract/areas'
import { sendEvents } from '@glandkeeper/contract/events'
import { addStop, changeRound, closeRound, listRounds, makeRound } from '@glandkeeper/contract/rounds'
import { addValve } from '@glandkeeper/contract/valves'
import { aCorrection, aLeak, aMissedVisit } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'

/** Two areas with three valves; the tank farm is walked before the boiler house, and there one floor after the other. */
async function aPlantToWalk() {
  const server = await aServer()
  await server.expectOk('planner', addArea, { body: { code: 'TF', name: 'Tank farm', walkPosition: 5, level: 1 } })
  const ids: Record<string, string> = {}
  for (const [tag, areaCode, walkPosition, level] of [
    ['BH-2', 'BH', 5, 1],
    ['BH-1', 'BH', 10, 0],
    ['TF-1', 'TF', 10, 1],
  ] as const)
    ids[tag] = (await server.expectOk('planner', addValve, { body: aValve({ tag, areaCode, walkPosition, level }) })).valveId
  const body = {
    name: 'Tuesday',
    walkOn: '2026-05-05',
    fitterId: server.personIds.fitter,
    areaCodes: ['BH', 'TF'],
    dueBy: null,
  }
  const visit = async (...events: unknown[]) => server.expectOk('fitter', sendEvents, { body: { events } })
  const stops = async () => (await server.expectOk('fitter', listRounds)).rounds.flatMap((round) => round.stops)
  return { ...server, ids, body, visit, stops }
}

it('a round lists the valves of its areas in walking order, for whom and when', async () => {
  const { expectOk, body } = await aPlantToWalk()
  const round = await expectOk('planner', makeRound, { body })
  expect(round).toMatchObject({ name: 'Tuesday', walkOn: '2026-05-05', fitterName: 'The fitter' })
  expect(round.stops.map(({ position, tag, areaName }) => [position, tag, areaName])).toEqual([
    [1, 'TF-1', 'Tank farm'],
    [2, 'BH-1', 'Boiler house'],
    [3, 'BH-2', 'Boiler house'],
  ])
  expect((await expectOk('fitter', listRounds)).rounds).toEqual([round])
})

it('only valves that are due by the day are on it, with those nobody has looked at', async () => {
  const { expectOk, body, ids, store } = await aPlantToWalk()
  const due = async (tag: string, at: string) =>
    store.write((write) => write.valveState.update({ where: { valveId: ids[tag]! }, data: { nextLookAt: new Date(at) } }))
  await due('BH-1', '2026-05-05T22:59:00Z')
  // Midnight of a summer day in London.
  await due('BH-2', '2026-05-05T23:00:00Z')
  const { stops } = await expectOk('planner', makeRound, { body: { ...body, dueBy: '2026-05-05' } })
  expect(stops.map(({ tag }) => tag)).toEqual(['TF-1', 'BH-1'])
})

it('a stop is visited by an entry made since, and open again when that is taken back', async () => {
  const { expectOk, body, ids, visit, stops } = await aPlantToWalk()
  await visit(aLeak({ valveId: ids['BH-1']!, takenAt: '2026-05-01T08:00:00Z' }))
  await expectOk('planner', makeRound, { body })
  expect((await stops()).map((stop) => stop.visit)).toEqual([null, null, null])
  const leak = aLeak({ valveId: ids['TF-1']!, takenAt: '2026-05-04T10:00:00Z', count: 2 })
  await visit(leak, aMissedVisit({ valveId: ids['BH-1']!, takenAt: '2026-05-04T10:10:00Z', reason: 'too hot' }))
  expect((await stops()).map((stop) => stop.visit)).toEqual([
    { at: '2026-05-04T10:00:00.000Z', kind: 'leak.seen', missed: null },
    { at: '2026-05-04T10:10:00.000Z', kind: 'visit.missed', missed: 'too hot' },
    null,
  ])
  await visit(
    aCorrection({
      valveId: ids['TF-1']!,
      takenAt: '2026-05-04T10:20:00Z',
      corrects: leak.id,
      replacement: null,
      reason: 'wrong valve',
    }),
  )
  expect((await stops())[0]?.visit).toBeNull()
})

it('a closed round is on no phone, and is closed once', async () => {
  const { expectOk, call, body } = await aPlantToWalk()
  const { roundId } = await expectOk('planner', makeRound, { body })
  await expectOk('planner', closeRound, { params: { roundId } })
  expect((await expectOk('fitter', listRounds)).rounds).toEqual([])
  expect(await call('planner', closeRound, { params: { roundId } })).toMatchObject({
    ok: false,
    problem: { code: 'round/unknown' },
  })
})

it('a round of nothing, of a strange area, person or of too many valves is refused by name, and nothing is written', async () => {
  const { call, body, ids, store, siteId } = await aPlantToWalk()
  const code = async (change: object) => {
    const answer = await call('planner', makeRound, { body: { ...body, ...change } })
    return answer.ok ? 'made' : answer.problem.code
  }
  const later = new Date('2026-09-01T00:00:00Z')
  await store.write((write) => write.valveState.updateMany({ data: { nextLookAt: later } }))
  expect(await code({ dueBy: '2026-05-05' })).toBe('round/nothing-due')
  expect(await code({ areaCodes: ['XX'] })).toBe('area/unknown')
  expect(await code({ fitterId: siteId })).toBe('person/unknown')
  const row = await store.read.valve.findUniqueOrThrow({ where: { id: ids['TF-1']! } })
  await store.write((write) =>
    write.valve.createMany({
      data: Array.from({ length: 200 }, (_, index) => ({
        ...row,
        id: `019a0000-0000-7000-8000-${String(index).padStart(12, '0')}`,
        tag: `MANY-${index}`,
      })),
    }),
  )
  expect(await code({})).toBe('round/too-long')
  expect(await store.read.round.count()).toBe(0)
})

it('of several corrections of one entry the latest holds for its stop too', async () => {
  const { expectOk, body, ids, visit, stops } = await aPlantToWalk()
  await expectOk('planner', makeRound, { body })
  const valveId = ids['TF-1']!
  const leak = aLeak({ valveId, takenAt: '2026-05-04T10:00:00Z', count: 2 })
  const correct = (takenAt: string, replacement: null | { kind: 'leak.seen'; takenAt: string; leak: 'drip' }) =>
    aCorrection({ valveId, takenAt, corrects: leak.id, reason: 'seen again', replacement })
  await visit(leak, correct('2026-05-04T10:20:00Z', null))
  expect((await stops())[0]?.visit).toBeNull()
  await visit(correct('2026-05-04T10:40:00Z', { kind: 'leak.seen', takenAt: leak.takenAt, leak: 'drip' }))
  expect((await stops())[0]?.visit).toMatchObject({ kind: 'leak.seen' })
})

it('is walked once every stop was visited or could not be done, and closed by somebody, who counts what was left out', async () => {
  const { expectOk, body, ids, visit, store, personIds } = await aPlantToWalk()
  const { roundId } = await expectOk('planner', makeRound, { body })
  const state = async () => (await expectOk('fitter', listRounds)).rounds[0]?.state
  await visit(
    aLeak({ valveId: ids['TF-1']!, takenAt: '2026-05-04T10:00:00Z' }),
    aLeak({ valveId: ids['BH-1']!, takenAt: '2026-05-04T10:10:00Z' }),
  )
  expect(await state()).toBe('open')
  await visit(aMissedVisit({ valveId: ids['BH-2']!, takenAt: '2026-05-04T10:20:00Z', reason: 'no access' }))
  expect(await state()).toBe('walked')
  expect(await expectOk('planner', closeRound, { params: { roundId } })).toEqual({ closed: true, leftOut: 1 })
  expect((await store.read.round.findFirst())?.closedById).toBe(personIds.planner)
})

it('day and fitter of a round are changed while it is open, and no stranger is put on it', async () => {
  const { expectOk, call, body, siteId, store } = await aPlantToWalk()
  const { roundId, stops } = await expectOk('planner', makeRound, { body })
  const params = { roundId }
  const changed = await expectOk('planner', changeRound, { params, body: { walkOn: '2026-05-08', fitterId: null } })
  expect(changed).toMatchObject({ walkOn: '2026-05-08', fitterName: null, stops })
  const refused = async (change: object) => {
    const answer = await call('planner', changeRound, { params, body: { walkOn: '2026-05-08', fitterId: null, ...change } })
    return answer.ok ? 'changed' : answer.problem.code
  }
  expect(await refused({ fitterId: siteId })).toBe('person/unknown')
  await expectOk('planner', closeRound, { params })
  expect(await refused({ walkOn: '2026-05-09' })).toBe('round/unknown')
  expect((await store.read.round.findFirst())?.walkOn).toBe('2026-05-08')
})

it('a fitter puts a valve on the round where it lengthens the way least, once, and it is known as added', async () => {
  const { expectOk, call, body, store } = await aPlantToWalk()
  const add = (tag: string, walkPosition: number, level: number) =>
    expectOk('planner', addValve, { body: aValve({ tag, areaCode: 'BH', walkPosition, level }) })
  const { roundId } = await expectOk('planner', makeRound, { body: { ...body, areaCodes: ['BH'] } })
  await add('BH-9', 7, 1)
  await add('BH-0', 3, 0)
  const put = (tag: string) => expectOk('fitter', addStop, { params: { roundId }, body: { tag } })
  await put('BH-9')
  await put('BH-0')
  const { stops } = await put('BH-9')
  // BH-1 on the ground at 10, BH-2 a level up at 5: BH-0 goes before the first, BH-9 between the two.
  expect(stops.map(({ position, tag, isAdded }) => [position, tag, isAdded])).toEqual([
    [1, 'BH-0', true],
    [2, 'BH-1', false],
    [3, 'BH-9', true],
    [4, 'BH-2', false],
  ])
  expect(await call('fitter', addStop, { params: { roundId }, body: { tag: 'NO-1' } })).toMatchObject({
    problem: { code: 'valve/unknown' },
  })
  await expectOk('planner', closeRound, { params: { roundId } })
  expect(await call('fitter', addStop, { params: { roundId }, body: { tag: 'TF-1' } })).toMatchObject({
    problem: { code: 'round/unknown' },
  })
  expect(await store.read.roundStop.count()).toBe(4)
})
