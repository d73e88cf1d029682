import { type FieldEvent, sendEvents } from '@glandkeeper/contract/events'
import { showBoard } from '@glandkeeper/contract/board'
import { addValve, changeValve, showValve } from '@glandkeeper/contract/valves'
import { aCorrection, aLeak, aMissedVisit, aNip, aReading, aRepack, aRingAdded } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { statesThatDiffer } from '../glands/index.ts'

async function aServerWithValve(tag = 'BH-1') {
  const server = await aServer()
  const { valveId } = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag }) })
  const send = async (...events: readonly unknown[]) =>
    (await server.expectOk('fitter', sendEvents, { body: { events: [...events] } })).outcomes
  const state = async () => (await server.expectOk('fitter', showValve, { params: { tag } })).state
  return { ...server, valveId, send, state }
}

const at = (day: string) => `${day}T08:00:00Z`

describe('entries from the field', () => {
  it('half a turn on an M12 gland takes 0.875 mm of the reserve', async () => {
    const { valveId, send, state } = await aServerWithValve()
    await send(aReading({ valveId, takenAt: at('2026-05-01'), gapLeft: 7.4, gapRight: 6.6 }))
    expect((await state()).reserve).toBeCloseTo(3.6, 9)
    await send(aNip({ valveId, takenAt: at('2026-05-02'), turnsLeft: 0.5, turnsRight: 0.5 }))
    expect(await state()).toMatchObject({
      reserve: 2.725,
      gapLeft: 6.525,
      gapRight: 5.725,
      gapIsInferred: true,
      reserveLimitedBy: 'gap',
    })
  })

  it('are judged alone: bad ones are refused with their faults, and their neighbours kept', async () => {
    const { valveId, send, store } = await aServerWithValve()
    const good = aReading({ valveId, takenAt: at('2026-05-01') })
    const outcomes = await send(
      good,
      { ...aReading({ valveId, takenAt: at('2026-05-02') }), gapLeft: 999 },
      { ...aLeak({ valveId, takenAt: at('2026-05-02') }), valveId: '019a0000-0000-7000-8000-000000000000' },
      { ...aLeak({ valveId, takenAt: at('2026-05-03') }), takenAt: '2099-01-01T00:00:00Z' },
      { ...aLeak({ valveId, takenAt: at('2026-05-03') }), kind: 'leak.heard' },
      'not an entry',
      null,
      aNip({ valveId, takenAt: at('2026-05-03') }),
    )
    expect(outcomes.map((outcome) => (outcome.outcome === 'refused' ? outcome.problem.code : outcome.outcome))).toEqual([
      'accepted',
      'event/invalid',
      'valve/unknown',
      'event/in-the-future',
      'event/unknown-kind',
      'event/invalid',
      'event/invalid',
      'accepted',
    ])
    expect(outcomes[1]).toMatchObject({ problem: { errors: [{ pointer: '#/gapLeft', detail: 'Gap: at most 200 mm' }] } })
    expect(await store.read.event.count()).toBe(2)
  })

  it('sent twice are one entry; the same id with other words is refused', async () => {
    const { valveId, send, store } = await aServerWithValve()
    const reading = aReading({ valveId, takenAt: at('2026-05-01'), gapLeft: 7 })
    expect(await send(reading)).toMatchObject([{ outcome: 'accepted', position: 1 }])
    expect(await send(reading, { ...reading, gapLeft: 8 })).toMatchObject([
      { outcome: 'already', position: 1 },
      { outcome: 'refused', problem: { code: 'event/id-reused' } },
    ])
    expect(await store.read.event.count()).toBe(1)
  })

  it('keeps when they were taken and when they were received apart', async () => {
    const { valveId, send, expectOk, now } = await aServerWithValve()
    await send(aReading({ valveId, takenAt: '2026-04-01T10:00:00+02:00' }))
    const { timeline } = await expectOk('engineer', showValve, { params: { tag: 'BH-1' } })
    expect(timeline[0]).toMatchObject({
      event: { takenAt: '2026-04-01T10:00:00+02:00' },
      receivedAt: now.toISOString(),
      by: 'The fitter',
    })
  })

  it('are flagged and not refused when they are odd', async () => {
    const { valveId, send } = await aServerWithValve()
    await send(
      aReading({ valveId, takenAt: at('2026-03-01'), gapLeft: 8, gapRight: 8 }),
      aNip({ valveId, takenAt: at('2026-03-02'), turnsLeft: 0.5, turnsRight: 0.5 }),
    )
    const [odd] = await send(aReading({ valveId, takenAt: at('2026-03-03'), gapLeft: 3.1, gapRight: 7, stem: 'stiff' }))
    const codes = odd?.outcome === 'accepted' ? odd.findings.map((finding) => finding.code) : []
    expect(codes).toEqual([
      'reserve/turns-disagree-with-gap',
      'reserve/stem-stiff',
      'reserve/follower-tilts',
      'forecast/unexpected-reading',
    ])
  })

  it('say when a figure is unusual or the clock of the device is ahead', async () => {
    const { valveId, send } = await aServerWithValve()
    const [outcome] = await send(
      aReading({ valveId, takenAt: '2026-05-04T09:30:00Z', gapLeft: 60, gapRight: 60, device: 'phone 3' }),
    )
    const details = outcome?.outcome === 'accepted' ? outcome.findings.map((finding) => finding.detail) : []
    expect(details).toEqual(
      expect.arrayContaining(['Gap 60 mm is unusual: 0 to 40 is usual', 'the clock of phone 3 is 30 minutes ahead']),
    )
  })
})

describe('a correction', () => {
  it('takes an entry back, keeps it beside itself, and the reserve follows', async () => {
    const { valveId, send, state, expectOk } = await aServerWithValve()
    const nip = aNip({ valveId, takenAt: at('2026-05-02'), turnsLeft: 0.5, turnsRight: 0.5 })
    await send(aReading({ valveId, takenAt: at('2026-05-01'), gapLeft: 7, gapRight: 7 }), nip)
    expect((await state()).reserve).toBeCloseTo(3.125, 9)
    await send(aCorrection({ valveId, takenAt: at('2026-05-03'), corrects: nip.id, replacement: null, reason: 'wrong valve' }))
    expect((await state()).reserve).toBeCloseTo(4, 9)
    const { timeline } = await expectOk('engineer', showValve, { params: { tag: 'BH-1' } })
    expect(timeline.map((entry) => entry.standsAs)).toEqual(['correction', 'taken back', 'as entered'])
  })

  it('puts other figures in the place of the first ones', async () => {
    const { valveId, send, state } = await aServerWithValve()
    const reading = aReading({ valveId, takenAt: at('2026-05-01'), gapLeft: 70, gapRight: 7 })
    await send(
      reading,
      aCorrection({
        valveId,
        takenAt: at('2026-05-03'),
        corrects: reading.id,
        reason: 'a digit too many',
        replacement: { kind: 'reading.taken', takenAt: at('2026-05-01'), gapLeft: 7 as never, gapRight: 7 as never },
      }),
    )
    expect(await state()).toMatchObject({ gapLeft: 7, gapRight: 7 })
  })
})

/** A history with everything in it: late entries, corrections before what they correct, equal times. */
function aHistory(valveId: string): FieldEvent[] {
  const wrong = aReading({ valveId, takenAt: at('2026-03-10'), gapLeft: 40, gapRight: 6 })
  return [
    aRepack({ valveId, takenAt: at('2026-01-10'), gapLeft: 12, gapRight: 12 }),
    aNip({ valveId, takenAt: at('2026-02-01'), count: 1 }),
    aNip({ valveId, takenAt: at('2026-02-01'), count: 2 }),
    aLeak({ valveId, takenAt: at('2026-02-20'), leak: 'drip' }),
    wrong,
    aCorrection({ valveId, takenAt: at('2026-03-11'), corrects: wrong.id, replacement: null, reason: 'misread' }),
    aCorrection({
      valveId,
      takenAt: at('2026-03-12'),
      corrects: wrong.id,
      reason: 'read again',
      replacement: { kind: 'reading.taken', takenAt: at('2026-03-10'), gapLeft: 9 as never, gapRight: 9.5 as never },
    }),
    aMissedVisit({ valveId, takenAt: at('2026-03-20') }),
    aRingAdded({ valveId, takenAt: at('2026-04-01'), gapLeft: 14, gapRight: 14 }),
    aNip({ valveId, takenAt: at('2026-04-20'), turnsLeft: 1, turnsRight: 0.5 }),
  ]
}

async function afterArrival(server: TestServer, valveId: string, events: readonly FieldEvent[], batch: number): Promise<unknown> {
  for (let from = 0; from < events.length; from += batch)
    await server.expectOk('fitter', sendEvents, { body: { events: events.slice(from, from + batch) } })
  const { valveId: _, ...state } = (await server.store.read.valveState.findUnique({ where: { valveId } })) ?? {}
  return state
}

it('the state follows the time taken: whatever order devices send in, they end in the same state', async () => {
  const server = await aServer()
  let made = 0
  const fresh = async () => {
    made += 1
    const { valveId } = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: `BH-${made}` }) })
    return valveId
  }
  const first = await fresh()
  const expected = await afterArrival(server, first, aHistory(first), 10)
  expect(expected).toMatchObject({ gapLeftMm: 12.25, gapRightMm: 13.125, entryCount: 10 })
  await fc.assert(
    fc.asyncProperty(
      fc.shuffledSubarray([...Array(10).keys()], { minLength: 10 }),
      fc.integer({ min: 1, max: 4 }),
      async (order, batch) => {
        const valveId = await fresh()
        const events = aHistory(valveId)
        expect(
          await afterArrival(
            server,
            valveId,
            order.map((index) => events[index]!),
            batch,
          ),
        ).toEqual(expected)
      },
    ),
    { numRuns: 20, seed: 20260504 },
  )
  const differing = []
  for await (const difference of statesThatDiffer(server.store.read, server.siteId, server.now)) differing.push(difference)
  expect(differing).toEqual([])
})

it('two phones sending at once give every entry its own place in the chain', async () => {
  const { valveId, expectOk, store } = await aServerWithValve()
  const events = [...Array(20).keys()].map((count) => aLeak({ valveId, takenAt: at('2026-05-01'), count }))
  await Promise.all(events.map((event) => expectOk('fitter', sendEvents, { body: { events: [event] } })))
  const rows = await store.read.event.findMany({ orderBy: { position: 'asc' } })
  expect(rows.map((row) => row.position)).toEqual([...Array(20).keys()].map((n) => n + 1))
})

it('a body over the limit, one that is not JSON and one of the wrong kind are refused in words', async () => {
  const { app, cookieOf, store } = await aServerWithValve()
  const headers = { cookie: cookieOf('fitter'), 'content-type': 'application/json' }
  const post = async (payload: string | Buffer, contentType = 'application/json') =>
    (
      await app.inject({ method: 'POST', url: '/api/events', payload, headers: { ...headers, 'content-type': contentType } })
    ).json()
  expect(await post(JSON.stringify({ events: ['x'.repeat(5 * 1024 * 1024)] }))).toMatchObject({
    status: 413,
    code: 'request/too-large',
  })
  expect(await post('{"events":[NaN]}')).toMatchObject({ status: 400, code: 'request/malformed' })
  expect(await post(Buffer.from([0x7b, 0xff, 0xfe]))).toMatchObject({ status: 400, code: 'request/malformed' })
  expect(await post('<event/>', 'application/xml')).toMatchObject({ status: 415, code: 'request/unsupported' })
  expect(await store.read.event.count()).toBe(0)
})

describe('a correction that changes nothing', () => {
  it('of another valve, of a correction, or of nothing known, is kept and says so', async () => {
    const { valveId, send, expectOk } = await aServerWithValve()
    const other = await expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-2' }) })
    const elsewhere = aReading({ valveId: other.valveId, takenAt: at('2026-05-01') })
    const first = aCorrection({
      valveId,
      takenAt: at('2026-05-02'),
      corrects: elsewhere.id,
      replacement: null,
      reason: 'wrong valve',
    })
    const second = aCorrection({
      valveId,
      takenAt: at('2026-05-03'),
      corrects: first.id,
      replacement: null,
      reason: 'again',
      count: 2,
    })
    const outcomes = await send(elsewhere, first, second)
    const codes = outcomes.slice(1).map((outcome) => (outcome.outcome === 'accepted' ? outcome.findings.map((f) => f.code) : []))
    expect(codes).toEqual([['event/corrects-nothing'], ['event/corrects-nothing']])
    const { timeline } = await expectOk('engineer', showValve, { params: { tag: 'BH-1' } })
    expect(timeline.flatMap((entry) => entry.findings.map((f) => f.code))).toEqual([
      'event/corrects-nothing',
      'event/corrects-nothing',
    ])
  })

  it('puts no reading without a figure in the place of another', async () => {
    const { valveId, send } = await aServerWithValve()
    const reading = aReading({ valveId, takenAt: at('2026-05-01') })
    const empty = { kind: 'reading.taken', takenAt: at('2026-05-01') } as const
    const correction = aCorrection({
      valveId,
      takenAt: at('2026-05-02'),
      corrects: reading.id,
      reason: 'unsure',
      replacement: empty,
    })
    expect((await send(reading, correction))[1]).toMatchObject({
      outcome: 'refused',
      problem: { errors: [{ pointer: '#/replacement/gapLeft' }] },
    })
  })
})

it('whatever entries the contract accepts, the board and the page of the valve can be shown', async () => {
  const { valveId, send, expectOk } = await aServerWithValve()
  const time = fc.integer({ min: 0, max: 2000 }).map((day) => new Date(Date.UTC(2020, 0, 1) + day * 86_400_000).toISOString())
  const gap = fc.constantFrom(0, 0.1, 7, 199, 200)
  const turn = fc.constantFrom(-10, -0.5, 0, 0.5, 10)
  let made = 0
  const entry = fc.oneof(
    fc
      .tuple(time, gap, gap, fc.constantFrom(undefined, 0, 300))
      .map(([takenAt, gapLeft, gapRight, threadRemaining]) =>
        aReading({ valveId, takenAt, gapLeft, gapRight, threadRemaining, count: (made += 1) }),
      ),
    fc
      .tuple(time, turn, turn)
      .map(([takenAt, turnsLeft, turnsRight]) => aNip({ valveId, takenAt, turnsLeft, turnsRight, count: (made += 1) })),
    fc
      .tuple(time, gap)
      .map(([takenAt, gapLeft]) => aRepack({ valveId, takenAt, gapLeft, gapRight: gapLeft, count: (made += 1) })),
  )
  await fc.assert(
    fc.asyncProperty(fc.array(entry, { minLength: 5, maxLength: 40 }), async (entries) => {
      await send(...entries)
      expect((await expectOk('fitter', showBoard, { query: {} })).rows).toHaveLength(1)
      await expectOk('engineer', showValve, { params: { tag: 'BH-1' } })
    }),
    { numRuns: 15, seed: 7 },
  )
})

it('an entry and a change of the gland at the same moment leave the state that both make', async () => {
  const server = await aServerWithValve()
  const { valveId, expectOk, store, siteId } = server
  for (let n = 0; n < 15; n += 1) {
    await Promise.all([
      expectOk('fitter', sendEvents, {
        body: { events: [aReading({ valveId, takenAt: at('2026-05-01'), gapLeft: 9 + n / 10, gapRight: 9, count: n })] },
      }),
      expectOk('planner', changeValve, {
        params: { tag: 'BH-1' },
        body: { revision: n + 1, valve: aValve({ areaCode: 'BH', tag: 'BH-1', gland: { keepClear: 2 + n / 10 } }) },
      }),
    ])
  }
  const differing = []
  for await (const difference of statesThatDiffer(store.read, siteId, new Date())) differing.push(difference)
  expect(differing).toEqual([])
})
