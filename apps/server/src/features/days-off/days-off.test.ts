import { addArea } from '@glandkeeper/contract/areas'
import { addCrew, addDaysOff, listDaysOff, removeDaysOff } from '@glandkeeper/contract/crews'
import type { BodyIn } from '@glandkeeper/contract/endpoint'
import { describe, expect, it } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { newId } from '../../platform/ids.ts'

const stop = {
  crewId: null,
  areaCode: null,
  reason: 'Summer stop',
  startsOn: '2026-07-06',
  endsOn: '2026-07-17',
  repeats: null,
  share: 1,
}

const aStop = (changed: Partial<BodyIn<typeof addDaysOff>>) => ({ body: { ...stop, ...changed } })

async function nothingIsWritten(server: TestServer): Promise<void> {
  expect(await server.store.read.daysOff.count()).toBe(0)
  expect(await server.store.read.registerChange.count({ where: { subject: 'days off' } })).toBe(0)
}

const early = { name: 'Early shift', hoursPerWeek: 30, skills: [], personIds: [] }

describe('days off', () => {
  it('of site, crew and area are kept as they were said, and listed by their first day', async () => {
    const server = await aServer()
    const { crewId } = await server.expectOk('planner', addCrew, { body: early })
    const ofArea = { areaCode: 'BH', reason: 'Boiler inspection', startsOn: '2026-09-01', endsOn: '2026-09-01' }
    const ofCrew = {
      crewId,
      reason: 'Training',
      startsOn: '2026-05-08',
      endsOn: '2026-05-08',
      repeats: 'FREQ=WEEKLY',
      share: 0.5,
    }
    const added = [
      await server.expectOk('planner', addDaysOff, aStop(ofArea)),
      await server.expectOk('engineer', addDaysOff, aStop(ofCrew)),
      await server.expectOk('planner', addDaysOff, aStop({})),
    ]
    expect(added).toMatchObject([ofArea, ofCrew, stop])
    const { daysOff } = await server.expectOk('fitter', listDaysOff)
    expect(daysOff).toEqual([added[1], added[2], added[0]])
  })

  it('of another site are neither listed nor removed', async () => {
    const server = await aServer()
    const { daysOffId } = await server.expectOk('planner', addDaysOff, aStop({}))
    await server.store.write(async (write) => {
      await write.site.create({ data: { id: 'other', name: 'Other', timeZone: 'Europe/London', createdAt: server.now } })
      await write.daysOff.update({ where: { id: daysOffId }, data: { siteId: 'other' } })
    })
    expect((await server.expectOk('planner', listDaysOff)).daysOff).toEqual([])
    expect(await server.call('planner', removeDaysOff, { params: { daysOffId } })).toMatchObject({
      status: 404,
      problem: { code: 'daysoff/unknown', detail: daysOffId },
    })
    expect(await server.store.read.daysOff.count()).toBe(1)
  })

  it('are removed once', async () => {
    const server = await aServer()
    const { daysOffId } = await server.expectOk('planner', addDaysOff, aStop({}))
    const kept = await server.expectOk('planner', addDaysOff, aStop({ reason: 'Spring stop' }))
    expect(await server.expectOk('engineer', removeDaysOff, { params: { daysOffId } })).toEqual({ removed: true })
    expect((await server.expectOk('planner', listDaysOff)).daysOff).toEqual([kept])
    expect((await server.call('planner', removeDaysOff, { params: { daysOffId } })).status).toBe(404)
  })
})

describe('days off are refused by name, with nothing written', () => {
  it.each([
    ['never comes', 'FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30'],
    ['ends before it begins', 'FREQ=WEEKLY;UNTIL=20200101'],
    ['cannot be read', 'every other Friday'],
    ['is finer than days', 'FREQ=HOURLY'],
  ])('whose rule %s', async (_why, repeats) => {
    const server = await aServer()
    const refused = await server.call('planner', addDaysOff, aStop({ repeats }))
    expect(refused).toMatchObject({ status: 422, problem: { code: 'daysoff/rule' } })
    expect(refused.ok || refused.problem.detail).toContain(repeats)
    await nothingIsWritten(server)
  })

  it('whose last day is before the first, at the last day; one day alone is taken', async () => {
    const server = await aServer()
    expect(await server.call('planner', addDaysOff, aStop({ endsOn: '2026-07-05' }))).toMatchObject({
      status: 422,
      problem: { code: 'request/invalid', errors: [{ pointer: '#/endsOn' }] },
    })
    await nothingIsWritten(server)
    await server.expectOk('planner', addDaysOff, aStop({ endsOn: stop.startsOn }))
  })

  it('of crew or area that are not there, or of both at once', async () => {
    const server = await aServer()
    const { crewId } = await server.expectOk('planner', addCrew, { body: early })
    await server.expectOk('planner', addArea, { body: { code: 'TF', name: 'Tank farm', walkPosition: 70, level: 0 } })
    const unknown = newId()
    expect(await server.call('planner', addDaysOff, aStop({ crewId: unknown }))).toMatchObject({
      status: 404,
      problem: { code: 'crew/unknown', detail: unknown },
    })
    await server.store.write(async (write) => {
      await write.site.create({ data: { id: 'other', name: 'Other', timeZone: 'Europe/London', createdAt: server.now } })
      await write.area.update({ where: { siteId_code: { siteId: server.siteId, code: 'TF' } }, data: { siteId: 'other' } })
    })
    for (const areaCode of ['ZZ', 'TF'])
      expect(await server.call('planner', addDaysOff, aStop({ areaCode }))).toMatchObject({
        status: 404,
        problem: { code: 'area/unknown', detail: areaCode },
      })
    expect(await server.call('planner', addDaysOff, aStop({ crewId, areaCode: 'BH' }))).toMatchObject({
      status: 422,
      problem: { errors: [{ pointer: '#/areaCode' }] },
    })
    await nothingIsWritten(server)
  })
})

it('a fitter looks at days off and changes none', async () => {
  const server = await aServer()
  const { daysOffId } = await server.expectOk('planner', addDaysOff, aStop({}))
  const refused = { status: 403, problem: { code: 'person/not-allowed' } }
  expect(await server.call('fitter', addDaysOff, aStop({}))).toMatchObject(refused)
  expect(await server.call('fitter', removeDaysOff, { params: { daysOffId } })).toMatchObject(refused)
  expect((await server.expectOk('fitter', listDaysOff)).daysOff).toHaveLength(1)
})

it('notes who added and removed days off, with what they were', async () => {
  const server = await aServer()
  const { daysOffId } = await server.expectOk('planner', addDaysOff, aStop({ areaCode: 'BH', repeats: 'FREQ=YEARLY' }))
  await server.expectOk('engineer', removeDaysOff, { params: { daysOffId } })
  const notes = await server.store.read.registerChange.findMany({ where: { subjectId: daysOffId }, orderBy: { id: 'asc' } })
  expect(notes.map(({ what, personId }) => [what, personId])).toEqual([
    ['days off added', server.personIds.planner],
    ['days off removed', server.personIds.engineer],
  ])
  const { crewId, ...days } = stop
  expect(crewId).toBeNull()
  expect(JSON.parse(notes[0]!.after)).toEqual({ ...days, crew: null, areaCode: 'BH', repeats: 'FREQ=YEARLY' })
  expect(JSON.parse(notes[1]!.before)).toMatchObject({ reason: 'Summer stop', startsOn: '2026-07-06' })
})
