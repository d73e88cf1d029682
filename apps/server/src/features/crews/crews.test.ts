import { addCrew, changeAreaWalk, changeCrew, listAreaWalks, listCrews, retireCrew } from '@glandkeeper/contract/crews'
import type { BodyIn } from '@glandkeeper/contract/endpoint'
import { describe, expect, it } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { newId } from '../../platform/ids.ts'

const early = { name: 'Early shift', hoursPerWeek: 37.5, skills: ['steam', 'confined space'], personIds: [] as string[] }
const untouched = { setUpMinutes: null, skill: null, crewId: null, walkPlan: null }

async function aCrew(server: TestServer, crew: Partial<BodyIn<typeof addCrew>> = {}): Promise<string> {
  return (await server.expectOk('planner', addCrew, { body: { ...early, ...crew } })).crewId
}

/** Each crew by name with the names of its people. */
async function whoWalks(server: TestServer): Promise<Record<string, string[]>> {
  const { crews } = await server.expectOk('fitter', listCrews)
  return Object.fromEntries(crews.map(({ name, people }) => [name, people.map((person) => person.name)]))
}

const notesOf = (server: TestServer) => server.store.read.registerChange.findMany({ orderBy: { id: 'asc' } })

const inBoilerHouse = (body: Partial<BodyIn<typeof changeAreaWalk>>) => ({
  params: { code: 'BH' },
  body: { ...untouched, ...body },
})

describe('the crews of a site', () => {
  it('are added with hours, skills and people, and listed by name', async () => {
    const server = await aServer()
    const { fitter, engineer } = server.personIds
    await server.expectOk('engineer', addCrew, { body: { ...early, name: 'Late shift', skills: [], hoursPerWeek: 12 } })
    const added = await server.expectOk('planner', addCrew, { body: { ...early, personIds: [fitter, engineer] } })
    expect(added).toMatchObject({
      name: 'Early shift',
      hoursPerWeek: 37.5,
      skills: ['steam', 'confined space'],
      people: [
        { personId: engineer, name: 'The engineer' },
        { personId: fitter, name: 'The fitter' },
      ],
    })
    const { crews } = await server.expectOk('fitter', listCrews)
    expect(crews.map(({ name }) => name)).toEqual(['Early shift', 'Late shift'])
    expect(crews[0]).toEqual(added)
  })

  it('are changed in everything, and have only the people last named', async () => {
    const server = await aServer()
    const { fitter, engineer } = server.personIds
    const crewId = await aCrew(server, { personIds: [fitter] })
    const body = { name: 'Day crew', hoursPerWeek: 20, skills: ['bleach'], personIds: [engineer] }
    expect(await server.expectOk('planner', changeCrew, { params: { crewId }, body })).toEqual({
      crewId,
      name: 'Day crew',
      hoursPerWeek: 20,
      skills: ['bleach'],
      people: [{ personId: engineer, name: 'The engineer' }],
    })
    await server.expectOk('planner', changeCrew, { params: { crewId }, body: { ...body, personIds: [] } })
    expect(await whoWalks(server)).toEqual({ 'Day crew': [] })
  })

  it('share nobody: a person walks with the crew that named them last', async () => {
    const server = await aServer()
    const { fitter, planner } = server.personIds
    await aCrew(server, { personIds: [fitter, planner] })
    await aCrew(server, { name: 'Late shift', personIds: [fitter] })
    expect(await whoWalks(server)).toEqual({ 'Early shift': ['The planner'], 'Late shift': ['The fitter'] })
  })

  it('are no longer listed once retired; their people and areas are free again', async () => {
    const server = await aServer()
    const { fitter } = server.personIds
    const crewId = await aCrew(server, { personIds: [fitter] })
    await server.expectOk('planner', changeAreaWalk, inBoilerHouse({ crewId, skill: 'steam' }))
    expect(await server.expectOk('engineer', retireCrew, { params: { crewId } })).toEqual({ retired: true })
    expect(await whoWalks(server)).toEqual({})
    const person = await server.store.read.person.findUniqueOrThrow({ where: { id: fitter } })
    expect(person.crewId).toBeNull()
    const { walks } = await server.expectOk('planner', listAreaWalks)
    expect(walks).toMatchObject([{ areaCode: 'BH', crewId: null, skill: 'steam' }])
    expect(await server.call('planner', retireCrew, { params: { crewId } })).toMatchObject({
      status: 404,
      problem: { code: 'crew/unknown' },
    })
  })
})

describe('what is not known is refused by name, with nothing written', () => {
  it('a person: nobody by that id, somebody who left, somebody of another site', async () => {
    const server = await aServer()
    const { fitter, planner, engineer } = server.personIds
    const crewId = await aCrew(server, { personIds: [fitter] })
    await server.store.write(async (write) => {
      await write.site.create({ data: { id: 'other', name: 'Other', timeZone: 'Europe/London', createdAt: server.now } })
      await write.person.update({ where: { id: engineer }, data: { siteId: 'other' } })
    })
    const before = await notesOf(server)
    for (const unknown of [newId(), engineer]) {
      const body = { ...early, name: 'Late shift', personIds: [planner, unknown] }
      const refused = { status: 404, problem: { code: 'person/unknown' } }
      expect(await server.call('planner', addCrew, { body })).toMatchObject(refused)
      expect(await server.call('planner', changeCrew, { params: { crewId }, body })).toMatchObject(refused)
    }
    await server.store.write((write) => write.person.update({ where: { id: fitter }, data: { retiredAt: server.now } }))
    const gone = { ...early, personIds: [fitter] }
    expect((await server.call('planner', addCrew, { body: gone })).status).toBe(404)
    await server.store.write((write) => write.person.update({ where: { id: fitter }, data: { retiredAt: null } }))
    expect(await whoWalks(server)).toEqual({ 'Early shift': ['The fitter'] })
    expect(await server.store.read.crew.count()).toBe(1)
    expect(await notesOf(server)).toEqual(before)
  })

  it('a crew: never there, or of another site', async () => {
    const server = await aServer()
    const crewId = await aCrew(server)
    await server.store.write(async (write) => {
      await write.site.create({ data: { id: 'other', name: 'Other', timeZone: 'Europe/London', createdAt: server.now } })
      await write.crew.update({ where: { id: crewId }, data: { siteId: 'other' } })
    })
    const before = await notesOf(server)
    for (const unknown of [newId(), crewId]) {
      const params = { crewId: unknown }
      const refused = { status: 404, problem: { code: 'crew/unknown', detail: unknown } }
      expect(await server.call('planner', changeCrew, { params, body: { ...early, name: 'Taken' } })).toMatchObject(refused)
      expect(await server.call('planner', retireCrew, { params })).toMatchObject(refused)
      expect(await server.call('planner', changeAreaWalk, inBoilerHouse({ crewId: unknown, setUpMinutes: 5 }))).toMatchObject(
        refused,
      )
    }
    expect(await whoWalks(server)).toEqual({})
    expect(await server.store.read.crew.findMany()).toMatchObject([{ name: 'Early shift', retiredAt: null }])
    expect((await server.expectOk('planner', listAreaWalks)).walks).toMatchObject([untouched])
    expect(await notesOf(server)).toEqual(before)
  })
})

describe('how an area is walked', () => {
  const walkPlan = {
    wayIn: { east: -12.5, north: 40, level: 0 },
    stairs: [
      { east: 3, north: 4, lowestLevel: -1, highestLevel: 3 },
      { east: 80, north: 4, lowestLevel: 0, highestLevel: 1 },
    ],
  }

  it('is kept and shown, way in and stairs with it, and can be taken back', async () => {
    const server = await aServer()
    const crewId = await aCrew(server)
    const walk = { areaCode: 'BH', areaName: 'Boiler house', setUpMinutes: 25, skill: 'steam', crewId, walkPlan }
    const { areaCode: _code, areaName: _name, ...body } = walk
    expect(await server.expectOk('planner', changeAreaWalk, { params: { code: 'BH' }, body })).toEqual(walk)
    expect(await server.expectOk('fitter', listAreaWalks)).toEqual({ walks: [walk] })
    const back = await server.expectOk('planner', changeAreaWalk, inBoilerHouse({ setUpMinutes: 0 }))
    expect(back).toMatchObject({ ...untouched, setUpMinutes: 0 })
  })

  it('is refused for an area that is not there, and with half a way in', async () => {
    const server = await aServer()
    expect(await server.call('planner', changeAreaWalk, { params: { code: 'ZZ' }, body: untouched })).toMatchObject({
      status: 404,
      problem: { code: 'area/unknown', detail: 'ZZ' },
    })
    const half = { ...walkPlan, wayIn: { east: 1, north: 2 } } as unknown as typeof walkPlan
    expect(await server.call('planner', changeAreaWalk, inBoilerHouse({ walkPlan: half }))).toMatchObject({
      status: 422,
      problem: { errors: [{ pointer: '#/walkPlan/wayIn/level' }] },
    })
    expect((await server.expectOk('planner', listAreaWalks)).walks).toMatchObject([untouched])
  })
})

it('a fitter looks at crews and areas and changes none of them', async () => {
  const server = await aServer()
  const crewId = await aCrew(server)
  const refused = { status: 403, problem: { code: 'person/not-allowed' } }
  expect(await server.call('fitter', addCrew, { body: early })).toMatchObject(refused)
  expect(await server.call('fitter', changeCrew, { params: { crewId }, body: early })).toMatchObject(refused)
  expect(await server.call('fitter', retireCrew, { params: { crewId } })).toMatchObject(refused)
  expect(await server.call('fitter', changeAreaWalk, inBoilerHouse({ setUpMinutes: 5 }))).toMatchObject(refused)
  expect((await server.expectOk('fitter', listCrews)).crews).toHaveLength(1)
  expect((await server.expectOk('fitter', listAreaWalks)).walks).toMatchObject([untouched])
})

it('notes who changed a crew and the walk of an area, with before and after', async () => {
  const server = await aServer()
  const { planner, engineer, fitter } = server.personIds
  const crewId = await aCrew(server, { personIds: [fitter] })
  await server.expectOk('engineer', changeCrew, { params: { crewId }, body: { ...early, hoursPerWeek: 30, skills: [] } })
  await server.expectOk('planner', changeAreaWalk, inBoilerHouse({ crewId, setUpMinutes: 20 }))
  await server.expectOk('planner', retireCrew, { params: { crewId } })
  const notes = await notesOf(server)
  expect(notes.map(({ what, personId, subject }) => [what, personId, subject])).toEqual([
    ['crew added', planner, 'crew'],
    ['crew changed', engineer, 'crew'],
    ['walk of the area changed', planner, 'area'],
    ['crew retired', planner, 'crew'],
  ])
  expect(notes.map(({ before, after }) => [JSON.parse(before) as unknown, JSON.parse(after) as unknown])).toMatchObject([
    [{}, { name: 'Early shift', hoursPerWeek: 37.5, skills: 'steam, confined space', people: 1 }],
    [
      { hoursPerWeek: 37.5, skills: 'steam, confined space' },
      { hoursPerWeek: 30, skills: '', people: 0 },
    ],
    [
      { setUpMinutes: null, crew: null },
      { setUpMinutes: 20, crew: 'Early shift' },
    ],
    [{ name: 'Early shift' }, { retired: 'yes' }],
  ])
})
