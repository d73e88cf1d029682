import { whoAmI } from '@glandkeeper/contract/people'
import { changeSite } from '@glandkeeper/contract/sites'
import { expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'

it('a site gets its own name and time zone, and keeps who changed them', async () => {
  const server = await aServer()
  await server.expectOk('planner', changeSite, {
    body: { name: 'Lower mill', timeZone: 'Europe/Helsinki', nextStopOn: '2026-06-09' },
  })
  expect((await server.expectOk('fitter', whoAmI)).person?.site).toMatchObject({
    name: 'Lower mill',
    timeZone: 'Europe/Helsinki',
    nextStopOn: '2026-06-09',
  })
  const [note] = await server.store.read.registerChange.findMany({ where: { subject: 'site' } })
  expect(note).toMatchObject({
    personId: server.personIds.planner,
    before: '{"name":"Test mill","nextStopOn":null,"timeZone":"Europe/London"}',
  })
})

it('a time zone nobody knows is refused with its place', async () => {
  const server = await aServer()
  const answer = await server.call('planner', changeSite, {
    body: { name: 'Lower mill', timeZone: 'Europe/Tarn Hollow', nextStopOn: null },
  })
  expect(answer).toMatchObject({ status: 422, problem: { errors: [{ pointer: '#/timeZone' }] } })
})
