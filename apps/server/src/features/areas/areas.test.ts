import { addArea, changeArea, listAreas } from '@glandkeeper/contract/areas'
import { expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'

it('adds areas and lists them in walking order with their valves counted', async () => {
  const server = await aServer()
  await server.expectOk('planner', addArea, { body: { code: 'TF', name: 'Tank farm', walkPosition: 70, level: 0 } })
  await server.expectOk('engineer', addArea, { body: { code: 'SM', name: 'Steam mains', walkPosition: 5, level: 2 } })
  const { areas } = await server.expectOk('fitter', listAreas)
  expect(areas.map((area) => [area.code, area.valveCount])).toEqual([
    ['SM', 0],
    ['BH', 0],
    ['TF', 0],
  ])
})

it('refuses a code that is taken, on adding and on changing, and keeps what was', async () => {
  const server = await aServer()
  await server.expectOk('planner', addArea, { body: { code: 'TF', name: 'Tank farm', walkPosition: 70, level: 0 } })
  expect(
    await server.call('planner', addArea, { body: { code: 'BH', name: 'Another', walkPosition: 1, level: 0 } }),
  ).toMatchObject({ status: 409, problem: { code: 'area/code-taken' } })
  expect(
    await server.call('planner', changeArea, {
      params: { code: 'TF' },
      body: { code: 'BH', name: 'Tank farm', walkPosition: 70, level: 0 },
    }),
  ).toMatchObject({ status: 409 })
  expect((await server.expectOk('planner', listAreas)).areas.map((area) => area.code)).toEqual(['BH', 'TF'])
})

it('notes who changed an area, with before and after', async () => {
  const server = await aServer()
  await server.expectOk('planner', changeArea, {
    params: { code: 'BH' },
    body: { code: 'BH', name: 'Boiler house, north', walkPosition: 10, level: 1 },
  })
  const [note] = await server.store.read.registerChange.findMany({ where: { subject: 'area' } })
  expect(note).toMatchObject({ what: 'area changed', personId: server.personIds.planner })
  expect([JSON.parse(note!.before).name, JSON.parse(note!.after).name]).toEqual(['Boiler house', 'Boiler house, north'])
})
