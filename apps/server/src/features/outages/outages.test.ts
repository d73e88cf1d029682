import { addOutage, callOffOutage, changeOutage, endOutage, listOutages, reviewOutage } from '@glandkeeper/contract/outages'
import { takeRepackPlan } from '@glandkeeper/contract/repack-plans'
import { aCorrection, aLeak, aReading, aRepack } from '@glandkeeper/fixtures/a-reading'
import { describe, expect, it } from 'vitest'
import { aPlantToRepack, aStop } from '../../../testing/a-plant-to-repack.ts'
import { aServer } from '../../../testing/a-server.ts'

describe('an outage', () => {
  it('is put down with its uncertain days, slipped, and called off, by those who keep the register', async () => {
    const { expectOk, call, store } = await aServer()
    const body = aStop('Summer stop', '2026-07-06', { earliestOn: '2026-06-29', latestOn: '2026-07-20' })
    const added = await expectOk('planner', addOutage, { body })
    expect(added).toMatchObject({ ...body, state: 'planned', revision: 1, repacks: 0 })
    const params = { outageId: added.outageId }
    const slipped = aStop('Summer stop', '2026-08-17')
    const changed = await expectOk('engineer', changeOutage, { params, body: { revision: 1, outage: slipped } })
    expect(changed).toMatchObject({ likelyOn: '2026-08-17', revision: 2 })
    expect(await call('planner', changeOutage, { params, body: { revision: 1, outage: slipped } })).toMatchObject({
      problem: { code: 'outage/changed-meanwhile' },
    })
    expect(await call('fitter', addOutage, { body })).toMatchObject({ status: 403 })
    await expectOk('planner', callOffOutage, { params, body: { revision: 2 } })
    expect(
      await call('planner', endOutage, { params, body: { revision: 3, startedOn: '2026-08-17', endedOn: '2026-08-20' } }),
    ).toMatchObject({
      problem: { code: 'outage/not-planned' },
    })
    expect((await expectOk('fitter', listOutages)).outages).toMatchObject([{ state: 'called off' }])
    const changes = await store.read.registerChange.findMany({ where: { subject: 'outage' }, orderBy: { at: 'asc' } })
    expect(changes.map(({ what }) => what).toSorted()).toEqual(['outage added', 'outage called off', 'outage changed'])
  })

  it.each([
    ['likelyOn', { earliestOn: '2026-07-07' }],
    ['latestOn', { latestOn: '2026-07-05' }],
    ['days', { days: 0 }],
    ['hours', { hours: { fitting: -1, scaffolding: 0, isolating: 0 } }],
  ])('is refused with the fault named: %s', async (field, more) => {
    const { call } = await aServer()
    const answer = await call('planner', addOutage, { body: aStop('Stop', '2026-07-06', more) })
    expect(answer).toMatchObject({ status: 422, problem: { code: 'request/invalid' } })
    expect(JSON.stringify(answer)).toContain(`#/${field}`)
  })
})

describe('the review of an outage', () => {
  it('holds what was planned against what was done, what leaked within 30 days, and who came back', async () => {
    const { plan, expectOk, call, enter, ids, setNow } = await aPlantToRepack()
    const { outageId } = await expectOk('planner', addOutage, { body: aStop('Spring stop', '2026-05-06') })
    const params = { outageId }
    expect(await call('planner', reviewOutage, { params })).toMatchObject({ problem: { code: 'outage/not-over' } })
    await expectOk('planner', takeRepackPlan, { params: { planId: (await plan()).planId } })
    setNow('2026-06-02T09:00:00Z')
    const [one = '', two = '', , four = '', , six = ''] = ids
    const done = { family: 'graphite braid', doneBy: { kind: 'contractor' as const, name: 'North' } }
    const wrong = aRepack({ valveId: six, takenAt: '2026-05-08T11:00:00Z' })
    await enter(
      aRepack({ valveId: one, takenAt: '2026-05-07T10:00:00Z', ...done }),
      aReading({ valveId: one, takenAt: '2026-05-10T10:00:00Z', gapLeft: 15, gapRight: 15 }),
      aRepack({ valveId: two, takenAt: '2026-05-07T14:00:00Z', ...done }),
      aLeak({ valveId: two, takenAt: '2026-05-19T10:00:00Z', leak: 'drip' }),
      // Not planned for the outage, and done in it; nobody came back.
      aRepack({ valveId: four, takenAt: '2026-05-09T10:00:00Z', family: 'PTFE braid' }),
      wrong,
      aCorrection({
        valveId: six,
        takenAt: '2026-05-08T12:00:00Z',
        corrects: wrong.id,
        replacement: null,
        reason: 'wrong valve',
      }),
    )
    await expectOk('planner', endOutage, { params, body: { revision: 1, startedOn: '2026-05-06', endedOn: '2026-05-12' } })
    const review = await expectOk('engineer', reviewOutage, { params })
    expect(review).toMatchObject({ planned: 3, done: 2, notDone: 1, extra: 1, leaked: 1, followUpLost: 1, isComplete: false })
    expect(review.byCrew.find(({ name }) => name === 'contractor North')).toMatchObject({ done: 2, leaked: 1 })
    expect(review.byFamily).toEqual([
      { name: 'PTFE braid', done: 1, leaked: 0, followUpLost: 1 },
      { name: 'graphite braid', done: 2, leaked: 1, followUpLost: 0 },
    ])
    expect(review.valves.map(({ tag, isPlanned, repackedOn }) => [tag, isPlanned, repackedOn])).toEqual([
      ['BH-1', true, '2026-05-07'],
      ['BH-2', true, '2026-05-07'],
      ['BH-4', false, '2026-05-09'],
      ['BH-6', true, null],
    ])
  })
})
