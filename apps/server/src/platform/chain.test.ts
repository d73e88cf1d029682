import { sendEvents } from '@glandkeeper/contract/events'
import { addValve } from '@glandkeeper/contract/valves'
import { aLeak } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { aServer } from '../../testing/a-server.ts'
import { canonicalJson, type ChainedEvent, linkedText, verifyChain } from './chain.ts'
import { chainOf } from './chain-rows.ts'

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

describe('the text that is hashed', () => {
  /** What is spelled, as an object of any key order. */
  const linked = (before: string, { takenAt, receivedAt, ...event }: ChainedEvent) => ({
    before,
    ...event,
    takenAt: takenAt.toJSON() as unknown,
    receivedAt: receivedAt.toJSON() as unknown,
  })
  const texts = fc.string({ unit: 'binary', maxLength: 40 })
  const anEvent = fc.record({
    id: texts,
    siteId: texts,
    position: fc.integer(),
    valveId: texts,
    kind: texts,
    version: fc.integer(),
    takenAt: fc.date({ noInvalidDate: false }),
    receivedAt: fc.date({ noInvalidDate: false }),
    personId: texts,
    device: fc.string({ maxLength: 40 }),
    body: fc.json().map((text) => text),
  })

  it('is the canonical JSON of the link, byte for byte, whatever stands in it', () => {
    fc.assert(
      fc.property(texts, anEvent, (before, event) => {
        expect(linkedText(before, event)).toBe(canonicalJson(linked(before, event)))
        const [takenAt, receivedAt] = [event.takenAt.toJSON(), event.receivedAt.toJSON()]
        if (takenAt !== null && receivedAt !== null)
          expect(linkedText(before, { ...event, takenAt, receivedAt })).toBe(linkedText(before, event))
      }),
      { numRuns: 1000 },
    )
  })

  it('is refused for half a surrogate pair as canonical JSON is, and not for its escape in a body', () => {
    const event = fc.sample(anEvent, 1)[0]!
    for (const half of ['\ud800', 'a\udfff', '\udc00\ud800']) {
      expect(() => linkedText('', { ...event, device: half })).toThrow('half a surrogate pair')
      expect(() => canonicalJson({ device: half })).toThrow('Lone surrogate')
    }
    const escaped = { ...event, device: '', body: String.raw`{"note":"\ud800"}` }
    expect(linkedText('', escaped)).toBe(canonicalJson(linked('', escaped)))
  })
})

async function aChain() {
  const server = await aServer()
  const { valveId } = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-1' }) })
  const events = [1, 2, 3, 4].map((count) => aLeak({ valveId, takenAt: `2026-05-0${count}T08:00:00Z`, count }))
  await server.expectOk('fitter', sendEvents, { body: { events } })
  const rows = []
  for await (const row of chainOf(server.store.chain, server.siteId)) rows.push(row)
  const site = (await server.store.read.site.findUnique({ where: { id: server.siteId } }))!
  return { rows, site: { ...site, eventsThere: rows.length } }
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
    ['time taken', { takenAt: new Date(0).toISOString() }],
    ['time received', { receivedAt: new Date(0).toISOString() }],
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

  it('names an event that was put where none was written', async () => {
    const { rows, site } = await aChain()
    const extra = { ...rows[0]!, id: 'extra' }
    expect(await verifyChain(oneByOne([{ ...extra, position: 0 }, ...rows]), site)).toMatchObject({
      position: 0,
      eventId: 'extra',
    })
    expect(await verifyChain(oneByOne(rows.toSpliced(2, 0, { ...extra, position: 2 })), site)).toMatchObject({
      position: 2,
      eventId: 'extra',
    })
    expect(await verifyChain(oneByOne(rows), { ...site, eventsThere: 5 })).toMatchObject({
      whole: false,
      position: 5,
      what: '4 events were written, 5 are there',
    })
  })

  it('tells each place whose link holds, and no other', async () => {
    const { rows, site } = await aChain()
    const told: number[] = []
    const forged = rows.map((row, index) => (index === 2 ? { ...row, device: 'another' } : row))
    await verifyChain(oneByOne(forged), site, (position) => told.push(position))
    expect(told).toEqual([1, 2])
  })

  it('shows a chain that was written anew from the middle, by the head the site keeps', async () => {
    const { rows, site } = await aChain()
    expect(await verifyChain(oneByOne(rows), { ...site, chainHead: 'another' })).toMatchObject({
      whole: false,
      what: 'the last hash is not the one the site keeps',
    })
  })
})
