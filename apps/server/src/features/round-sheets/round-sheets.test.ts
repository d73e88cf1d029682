import { makeRound, printRound, showCarry } from '@glandkeeper/contract/rounds'
import { sendEvents } from '@glandkeeper/contract/events'
import { addValve } from '@glandkeeper/contract/valves'
import { aReading } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { newId } from '../../platform/ids.ts'

/** A round of one valve with hardly any travel left. */
async function aRoundToCarryFor() {
  const server = await aServer()
  const { valveId } = await server.expectOk('planner', addValve, { body: aValve({ tag: 'BH-1', areaCode: 'BH' }) })
  await server.expectOk('fitter', sendEvents, {
    body: { events: [aReading({ valveId, takenAt: '2026-05-04T08:00:00Z', gapLeft: 3, gapRight: 3 })] },
  })
  const { roundId } = await server.expectOk('planner', makeRound, {
    body: { name: 'Tuesday', walkOn: '2026-05-05', fitterId: null, areaCodes: ['BH'], dueBy: null },
  })
  const paper = (id: string) =>
    server.app.inject({ url: printRound.path.replace(':roundId', id), headers: { cookie: server.cookieOf('fitter') } })
  return { server, roundId, paper }
}

it('what to carry is said on the screen: the spanner of its nuts, and packing for the gland that is spent', async () => {
  const { server, roundId } = await aRoundToCarryFor()
  const { lines } = await server.expectOk('fitter', showCarry, { params: { roundId } })
  expect(lines[0]).toMatchObject({ name: 'Spanners', says: expect.stringContaining('1 stop') })
  expect(lines.find(({ name }) => name === 'For repacks')?.says).toContain('BH-1')
})

it('a sheet is a PDF under the day of its round', async () => {
  const { roundId, paper } = await aRoundToCarryFor()
  const { statusCode, headers, rawPayload } = await paper(roundId)
  expect([statusCode, headers['content-disposition']]).toEqual([200, 'inline; filename="round-2026-05-05.pdf"'])
  expect(rawPayload.subarray(0, 5).toString()).toBe('%PDF-')
})

it('a round nobody knows, and one of another site, is refused by name', async () => {
  const { server, roundId, paper } = await aRoundToCarryFor()
  expect((await paper(newId())).json()).toMatchObject({ status: 404, code: 'round/unknown' })
  await server.store.write(async (write) => {
    const site = { id: newId(), name: 'Another', timeZone: 'Europe/London', createdAt: server.now }
    await write.site.create({ data: site })
    await write.round.update({ where: { id: roundId }, data: { siteId: site.id } })
  })
  expect((await paper(roundId)).json()).toMatchObject({ status: 404, code: 'round/unknown' })
  expect(await server.call('fitter', showCarry, { params: { roundId } })).toMatchObject({ problem: { code: 'round/unknown' } })
})
