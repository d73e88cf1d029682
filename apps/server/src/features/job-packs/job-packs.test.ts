import { retireValve } from '@glandkeeper/contract/valves'
import { describe, expect, it } from 'vitest'
import type { TestServer } from '../../../testing/a-server.ts'
import { anOutage, aPlanInUse } from '../../../testing/planned-outage.ts'
import { type PrintedPage, printedPages, tagOf } from '../../../testing/printed.ts'
import { add, withValves } from '../../../testing/valves-alike.ts'
import { newId } from '../../platform/ids.ts'
import { slotOfOutage } from '../repack-plans/index.ts'

/** A machine that runs every test at once is slow to load what prints. */
const SLOW_MACHINE = 120_000

const ask = (server: TestServer, address: string) =>
  server.app.inject({ url: `/api/${address}`, headers: { host: 'mill.example', cookie: server.cookieOf('fitter') } })

/** Tags of the packs in order, by their first pages. */
async function packsIn(server: TestServer, address: string): Promise<string[]> {
  const answer = await ask(server, address)
  expect([answer.statusCode, answer.headers['content-type']]).toEqual([200, 'application/pdf'])
  return (await printedPages(answer.rawPayload)).filter(isFirst).map(tagOf)
}

const isFirst = ({ pieces }: PrintedPage) => pieces.some(({ says }) => says === 'Before work begins')

describe('which valves are in a pack', { timeout: SLOW_MACHINE }, () => {
  const boundary = 'BH boundary 1'

  it('the one that is asked for; with its boundary those that the plan in use has with it', async () => {
    const server = await withValves(3, { isolationBoundary: boundary })
    await add(server, { tag: 'BH-77', isolationBoundary: 'another' })
    expect(await packsIn(server, 'valves/BH-2/job-pack.pdf?with=boundary')).toEqual(['BH-2'])
    await aPlanInUse(server, 'fortnight:2026-05-04', ['BH-1', 'BH-2', 'BH-77'])
    expect(await packsIn(server, 'valves/BH-2/job-pack.pdf')).toEqual(['BH-2'])
    expect(await packsIn(server, 'valves/BH-2/job-pack.pdf?with=boundary')).toEqual(['BH-2', 'BH-1'])
    expect(await packsIn(server, 'valves/BH-3/job-pack.pdf?with=boundary')).toEqual(['BH-3'])
  })

  it('valves without a boundary are not isolated together', async () => {
    const server = await withValves(2, { isolationBoundary: '' })
    await aPlanInUse(server, 'fortnight:2026-05-04', ['BH-1', 'BH-2'])
    expect(await packsIn(server, 'valves/BH-1/job-pack.pdf?with=boundary')).toEqual(['BH-1'])
  })

  it('of an outage those the plan in use has in it, boundary by boundary; neither retired ones nor those of another slot', async () => {
    const server = await withValves(4, { isolationBoundary: '' })
    await server.store.write((write) =>
      write.valve.updateMany({ where: { tag: { in: ['BH-1', 'BH-4'] } }, data: { isolationBoundary: boundary } }),
    )
    await add(server, { tag: 'BH-5', isolationBoundary: '' })
    const outageId = await anOutage(server)
    await aPlanInUse(server, slotOfOutage(outageId), ['BH-1', 'BH-2', 'BH-4', 'BH-5'])
    await server.expectOk('planner', retireValve, { params: { tag: 'BH-5' }, body: { revision: 1, reason: 'removed' } })
    expect(await packsIn(server, `outages/${outageId}/job-pack.pdf`)).toEqual(['BH-1', 'BH-4', 'BH-2'])
    expect(await packsIn(server, `outages/${await anOutage(server)}/job-pack.pdf`)).toEqual([])
  })

  it('41 make two parts: forty, and the one that is left', async () => {
    const server = await withValves(41, { isolationBoundary: '' })
    const outageId = await anOutage(server)
    await aPlanInUse(
      server,
      slotOfOutage(outageId),
      Array.from({ length: 41 }, (_, index) => `BH-${index + 1}`),
    )
    expect(await packsIn(server, `outages/${outageId}/job-pack.pdf?part=2`)).toEqual(['BH-41'])
  })
})

describe('what is refused', { timeout: SLOW_MACHINE }, () => {
  it('a valve, an outage and a part there is not, and an outage of another site', async () => {
    const server = await withValves(1)
    const outageId = await anOutage(server)
    const refusal = async (address: string) => (await ask(server, address)).json<object>()
    expect(await refusal('valves/NO-1/job-pack.pdf')).toMatchObject({ status: 404, code: 'valve/unknown' })
    expect(await refusal(`outages/${newId()}/job-pack.pdf`)).toMatchObject({ status: 404, code: 'outage/unknown' })
    expect(await refusal(`outages/${outageId}/job-pack.pdf?part=2`)).toMatchObject({
      status: 422,
      code: 'request/invalid',
      errors: [{ pointer: '#query/part', detail: 'the pack of this outage has 1 part' }],
    })
    expect(await refusal(`outages/${outageId}/job-pack.pdf?part=0`)).toMatchObject({ status: 422, code: 'request/invalid' })
    await server.store.write(async (write) => {
      const site = { id: newId(), name: 'Another', timeZone: 'Europe/London', createdAt: server.now }
      await write.site.create({ data: site })
      await write.outage.update({ where: { id: outageId }, data: { siteId: site.id } })
    })
    expect(await refusal(`outages/${outageId}/job-pack.pdf`)).toMatchObject({ status: 404, code: 'outage/unknown' })
  })

  it('a tag and a name of any script make plain file names', async () => {
    const server = await withValves(1, { tag: 'ВН 1/ä' })
    const named = async (address: string) => (await ask(server, address)).headers['content-disposition']
    expect(await named(`valves/${encodeURIComponent('ВН 1/ä')}/job-pack.pdf`)).toBe('inline; filename="job-pack--1-.pdf"')
    const outageId = await anOutage(server, { name: 'Žluť 2026' })
    expect(await named(`outages/${outageId}/job-pack.pdf`)).toBe('inline; filename="job-packs--lu-2026-1.pdf"')
  })
})
