import { sendEvents } from '@glandkeeper/contract/events'
import { addValve } from '@glandkeeper/contract/valves'
import { aLeak } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it } from 'vitest'
import { aServer } from '../../testing/a-server.ts'
import { chainOf } from '../features/events/chain-of.ts'
import { canonicalJson, verifyChain } from './chain.ts'

it('canonical JSON sorts keys at every depth and spells numbers one way, as RFC 8785 shows', () => {
  // The example of RFC 8785, section 3.2.2, without its string of escapes.
  expect(
    canonicalJson({
      // oxlint-disable-next-line no-loss-of-precision -- the example has it so
      numbers: [333333333.33333329, 1e30, 4.5, 2e-3, 0.000000000000000000000000001],
      literals: [null, true, false],
    }),
  ).toBe('{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27]}')
  expect(canonicalJson({ b: { d: 1, c: 2 }, a: [{ z: 1, y: 2 }] })).toBe('{"a":[{"y":2,"z":1}],"b":{"c":2,"d":1}}')
})

async function aChain() {
  const server = await aServer()
  const { valveId } = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-1' }) })
  const events = [1, 2, 3, 4].map((count) => aLeak({ valveId, takenAt: `2026-05-0${count}T08:00:00Z`, count }))
  await server.expectOk('fitter', sendEvents, { body: { events } })
  const rows = []
  for await (const row of chainOf(server.store.read, server.siteId)) rows.push(row)
  const site = (await server.store.read.site.findUnique({ where: { id: server.siteId } }))!
  return { rows, site }
}

async function* oneByOne<T>(rows: readonly T[]): AsyncGenerator<T> {
  yield* rows
}

describe('the chain of events', () => {
  it('is whole as it was written', async () => {
    const { rows, site } = await aChain()
    expect(await verifyChain(oneByOne(rows), site)).toEqual({ whole: true, events: 4, head: site.chainHead })
  })

  it.each([
    ['body', { body: '{"leak":"dry"}' }],
    ['time taken', { takenAt: new Date(0) }],
    ['time received', { receivedAt: new Date(0) }],
    ['person', { personId: 'somebody else' }],
    ['device', { device: 'another' }],
    ['valve', { valveId: 'another' }],
    ['hash', { hash: '0'.repeat(64) }],
  ])('names the first event whose %s was altered', async (_, change) => {
    const { rows, site } = await aChain()
    const forged = rows.map((row, index) => (index === 1 ? { ...row, ...change } : row))
    expect(await verifyChain(oneByOne(forged), site)).toMatchObject({ whole: false, position: 2, eventId: rows[1]!.id })
  })

  it('names an event that is missing in the middle, and at the end', async () => {
    const { rows, site } = await aChain()
    expect(await verifyChain(oneByOne(rows.toSpliced(1, 1)), site)).toMatchObject({
      whole: false,
      position: 2,
      what: 'the event at position 2 is missing',
    })
    expect(await verifyChain(oneByOne(rows.slice(0, 3)), site)).toMatchObject({
      whole: false,
      position: 4,
      what: '4 events were written, 3 are there',
    })
  })

  it('shows a chain that was written anew from the middle, by the head the site keeps', async () => {
    const { rows, site } = await aChain()
    expect(await verifyChain(oneByOne(rows), { ...site, chainHead: 'another' })).toMatchObject({
      whole: false,
      what: 'the last hash is not the one the site keeps',
    })
  })
})
