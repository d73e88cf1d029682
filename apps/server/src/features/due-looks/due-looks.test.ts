import { showDueLooks } from '@glandkeeper/contract/due-looks'
import { sendEvents } from '@glandkeeper/contract/events'
import { closeRound, makeRound } from '@glandkeeper/contract/rounds'
import { addValve } from '@glandkeeper/contract/valves'
import { aCorrection, aLeak, aMissedVisit } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'

/** Four valves in the boiler house; the clock moves on when it is told to. */
async function aPlant() {
  let now = new Date('2026-05-04T09:00:00Z')
  const server = await aServer({ clock: () => now })
  const ids: string[] = []
  for (const tag of ['BH-1', 'BH-2', 'BH-3', 'BH-4'])
    ids.push((await server.expectOk('planner', addValve, { body: aValve({ tag, areaCode: 'BH', criticality: 'high' }) })).valveId)
  const enter = (...events: unknown[]) => server.expectOk('fitter', sendEvents, { body: { events } })
  const setNow = (moment: string) => (now = new Date(moment))
  return { ...server, ids, enter, setNow, due: () => server.expectOk('fitter', showDueLooks) }
}

it('counts a look as overdue from the day after it was due, with the rule that asked for it', async () => {
  const { ids, enter, setNow, due } = await aPlant()
  for (const valveId of ids) await enter(aLeak({ valveId, takenAt: '2026-05-01T09:00:00Z', leak: 'dry' }))
  // Five weeks later, on Friday 5 June.
  setNow('2026-06-05T20:00:00Z')
  expect((await due()).overdueCount).toBe(0)
  setNow('2026-06-07T09:00:00Z')
  const { overdueCount, overdue, areas } = await due()
  expect(overdueCount).toBe(4)
  expect(overdue[0]).toMatchObject({
    tag: expect.any(String),
    dueOn: '2026-06-05',
    daysOver: 2,
    cause: 'longest time between looks',
  })
  expect(areas.find(({ areaCode }) => areaCode === 'BH')).toMatchObject({ valves: 4, overdue: { watch: 4 } })
})

it('says of each week of rounds what was visited in time, later, not done, and not at all', async () => {
  const { ids, enter, setNow, due, expectOk } = await aPlant()
  const { roundId } = await expectOk('planner', makeRound, {
    body: { name: 'Tuesday', walkOn: '2026-05-05', fitterId: null, areaCodes: ['BH'], dueBy: null },
  })
  const [first = '', second = '', third = ''] = ids
  setNow('2026-05-12T12:00:00Z')
  await enter(
    aLeak({ valveId: first, takenAt: '2026-05-05T10:00:00Z', leak: 'drip' }),
    aLeak({ valveId: second, takenAt: '2026-05-11T10:00:00Z', leak: 'dry' }),
    aMissedVisit({ valveId: third, takenAt: '2026-05-05T10:20:00Z', reason: 'too hot' }),
  )
  const week = { weekOf: '2026-05-04', stops: 4, inTime: 1, later: 1, missed: 1 }
  expect((await due()).weeks).toEqual([week])
  await expectOk('planner', closeRound, { params: { roundId } })
  // What is seen after the round was put away was not seen on it.
  setNow('2026-05-14T12:00:00Z')
  await enter(aLeak({ valveId: third, takenAt: '2026-05-14T10:00:00Z', leak: 'dry' }))
  expect((await due()).weeks).toEqual([week])
})

it('counts looks by area and those that found something; what was taken back counts for nothing', async () => {
  const { ids, enter, due } = await aPlant()
  const [first = '', second = ''] = ids
  const leak = aLeak({ valveId: first, takenAt: '2026-05-04T08:00:00Z', leak: 'drip' })
  await enter(
    leak,
    aLeak({ valveId: second, takenAt: '2026-05-04T08:10:00Z', leak: 'dry' }),
    aMissedVisit({ valveId: second, takenAt: '2026-05-04T08:20:00Z', reason: 'too hot' }),
  )
  const area = async () => (await due()).areas.find(({ areaCode }) => areaCode === 'BH')
  expect(await area()).toMatchObject({ looks: 2, found: 1 })
  await enter(
    aCorrection({ valveId: first, takenAt: '2026-05-04T08:30:00Z', corrects: leak.id, replacement: null, reason: 'wrong valve' }),
  )
  expect(await area()).toMatchObject({ looks: 1, found: 0 })
})

it('counts a look as it was put right, at its own time', async () => {
  const { ids, enter, due } = await aPlant()
  const [first = ''] = ids
  const leak = aLeak({ valveId: first, takenAt: '2026-05-04T08:00:00Z', leak: 'drip' })
  const replacement = { kind: 'leak.seen' as const, leak: 'dry' as const, takenAt: '2026-05-04T08:05:00Z' }
  await enter(
    leak,
    aCorrection({ valveId: first, takenAt: '2026-05-04T08:30:00Z', corrects: leak.id, replacement, reason: 'it was rain' }),
  )
  expect((await due()).areas.find(({ areaCode }) => areaCode === 'BH')).toMatchObject({ looks: 1, found: 0 })
})
