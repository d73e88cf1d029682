import { setTimeout as pause } from 'node:timers/promises'
import { showBoard } from '@glandkeeper/contract/board'
import { type CalibrationRow, showCalibration } from '@glandkeeper/contract/calibration'
import { sendEvents } from '@glandkeeper/contract/events'
import { addValve, showValve } from '@glandkeeper/contract/valves'
import { aCorrection, aLeak, aMissedVisit, aReading, aRepack } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it } from 'vitest'
import { aServerWithPlant } from '../../../testing/a-plant.ts'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { Calibrations } from './calibration.ts'

const at = (day: string) => `${day}T08:00:00Z`

/** A valve repacked in 2024 that loses about a millimetre in four months; a last gap of 3 mm leaves no travel. */
async function sendLife(server: TestServer, tag: string, lastGap: number | null, higher = 0): Promise<string> {
  const { valveId } = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag }) })
  const gap = (side: number) => ({ gapLeft: side + higher, gapRight: side + higher })
  const entries = [
    aRepack({ valveId, takenAt: at('2024-01-10'), ...gap(8) }),
    aReading({ valveId, takenAt: at('2024-05-10'), ...gap(6) }),
    aReading({ valveId, takenAt: at('2024-09-10'), ...gap(5) }),
    aReading({ valveId, takenAt: at('2025-01-10'), ...gap(4) }),
    ...(lastGap === null ? [] : [aReading({ valveId, takenAt: at('2025-05-10'), ...gap(lastGap) })]),
  ]
  for (const entry of entries) await server.expectOk('fitter', sendEvents, { body: { events: [entry] } })
  return valveId
}

const said = (server: TestServer) => server.expectOk('fitter', showCalibration, { query: { of: 'said' } })
const replayed = (server: TestServer) => server.expectOk('fitter', showCalibration, { query: { of: 'replayed' } })
const counts = ({ forecasts, lives, ranOut }: CalibrationRow) => ({ forecasts, lives, ranOut })

describe('forecasts really said', () => {
  it('are none in a new register, and that is an answer', async () => {
    expect(await said(await aServer())).toMatchObject({
      valves: 0,
      overall: { forecasts: 0, unknownBecause: 'too few lives' },
      curve: [],
    })
  })

  it('are judged by what became of the life: ten that ran out, two still watched', async () => {
    const server = await aServer()
    for (let number = 1; number <= 12; number += 1) await sendLife(server, `BH-${number}`, number <= 10 ? 3 : null)
    const shown = await said(server)
    expect(shown).toMatchObject({ of: 'said', fittedAt: null, valves: 12, valvesLookedAt: 12 })
    // With the repack, then at the 2nd, 3rd and 4th reading; of two nothing more was seen after the 4th.
    expect(counts(shown.overall)).toEqual({ forecasts: 46, lives: 12, ranOut: 40 })
    expect(shown.byReadings.map((row) => [row.name, row.forecasts])).toEqual([
      ['1', 12],
      ['2', 12],
      ['3', 12],
      ['4 to 5', 10],
      ['6 to 9', 0],
      ['10 or more', 0],
    ])
    expect(shown.byGroup.map(({ name, lives }) => [name, lives])).toEqual([['saturated steam · graphite braid', 12]])
    const third = shown.byReadings[2]!
    expect(third).toMatchObject({ unknownBecause: null, besideStraightLine: { forecasts: 10 } })
    expect(third.within80!.lower).toBeLessThanOrEqual(third.within80!.share)
    expect(shown.curve.length).toBeGreaterThan(5)
    expect(shown.byReadings[5]).toMatchObject({ within80: null, unknownBecause: 'too few lives', middleMiss: null })
  }, 60_000)

  it('stay as they were said when an entry is taken back; only the outcome is another', async () => {
    const server = await aServer()
    const valveId = await sendLife(server, 'BH-1', 3)
    const kept = () => server.store.read.forecastMade.findMany({ orderBy: { id: 'asc' } })
    const before = await kept()
    expect(before).toHaveLength(5)
    expect(counts((await said(server)).overall)).toEqual({ forecasts: 4, lives: 1, ranOut: 4 })
    const { timeline } = await server.expectOk('fitter', showValve, { params: { tag: 'BH-1' } })
    const corrects = timeline.find(({ event }) => event.takenAt.startsWith('2025-05-10'))!.event.id
    const events = [aCorrection({ valveId, takenAt: at('2025-05-11'), corrects })]
    await server.expectOk('fitter', sendEvents, { body: { events } })
    expect((await kept()).slice(0, 5)).toEqual(before)
    // The life was last seen in January now: three forecasts have something after them, none an end.
    expect(counts((await said(server)).overall)).toEqual({ forecasts: 3, lives: 1, ranOut: 0 })
  })

  it('of a life that was read and renewed at one moment are judged by that reading, and the next life begins after it', async () => {
    const server = await aServer()
    const valveId = await sendLife(server, 'BH-1', null)
    // A list of old entries knows the day only: the last reading of a life and its repack bear one time.
    const day = at('2025-05-10')
    const [first, second] = ['00000000-0000-8000-a000-000000000000', 'ffffffff-ffff-8fff-afff-fffffffffff0']
    const events = [
      aReading({ valveId, id: first, takenAt: day, gapLeft: 3, gapRight: 3 }),
      aRepack({ valveId, id: second, takenAt: day, gapLeft: 8, gapRight: 8 }),
      aReading({ valveId, takenAt: at('2025-09-10'), gapLeft: 7, gapRight: 7 }),
    ]
    await server.expectOk('fitter', sendEvents, { body: { events } })
    // Four of the life that ran out, and one said with the repack of a life that goes on.
    expect(counts((await said(server)).overall)).toEqual({ forecasts: 5, lives: 2, ranOut: 4 })
    const { lives, ranOut } = (await replayed(server)).overall
    expect({ lives, ranOut: ranOut > 0 }).toEqual({ lives: 2, ranOut: true })
  })

  it('reach to the last reading, not to a visit at which nothing was read', async () => {
    const server = await aServer()
    const valveId = await sendLife(server, 'BH-1', null)
    const events = [aMissedVisit({ valveId, takenAt: at('2025-08-10') }), aLeak({ valveId, takenAt: at('2025-09-10') })]
    await server.expectOk('fitter', sendEvents, { body: { events } })
    expect((await said(server)).overall.forecasts).toBe(3)
  })

  it('cannot be altered in the register', async () => {
    const server = await aServer()
    await sendLife(server, 'BH-1', 3)
    const alter = server.store.write((write) => write.forecastMade.updateMany({ data: { dates: '[]' } }))
    await expect(alter).rejects.toThrow()
    await expect(server.store.write((write) => write.forecastMade.deleteMany())).rejects.toThrow()
    expect((await said(server)).overall.forecasts).toBe(4)
  })
})

describe('forecasts made again from the readings of their time', () => {
  it('of a plant with six years of history: every span of readings, shares, the straight line beside', async () => {
    const server = await aServerWithPlant(62)
    expect(await said(server)).toMatchObject({ valves: 0 })
    const shown = await replayed(server)
    expect(shown).toMatchObject({ of: 'replayed', valves: 62, valvesLookedAt: 62, fittedAt: server.now.toISOString() })
    expect(shown.byReadings.map(({ forecasts }) => forecasts).reduce((sum, each) => sum + each, 0)).toBe(shown.overall.forecasts)
    expect(shown.byGroup.map(({ forecasts }) => forecasts).reduce((sum, each) => sum + each, 0)).toBe(shown.overall.forecasts)
    expect(shown.overall.lives).toBeGreaterThan(60)
    expect(shown.byReadings[0]!.forecasts).toBeGreaterThanOrEqual(shown.byReadings[2]!.forecasts)
    expect(shown.overall.ranOut).toBeGreaterThan(0)
  }, 60_000)

  it('are kept until something changes, and two who ask at once wait for one', async () => {
    const server = await aServer()
    // Replayed forecasts speak of the 4 mm that call for a watch, so the whole life stands 4 mm higher.
    const valveId = await sendLife(server, 'BH-1', 3.4, 4)
    const calibrations = new Calibrations(server.store)
    const ask = () => calibrations.of(server.siteId, 'replayed', server.now)
    const [one, other] = await Promise.all([ask(), ask()])
    expect(other).toBe(one)
    expect(await ask()).toBe(one)
    expect(counts(one.overall as CalibrationRow)).toEqual({ forecasts: 4, lives: 1, ranOut: 0 })
    const events = [aReading({ valveId, takenAt: at('2025-09-10'), gapLeft: 7, gapRight: 7 })]
    await server.expectOk('fitter', sendEvents, { body: { events } })
    expect(counts((await ask()).overall as CalibrationRow)).toEqual({ forecasts: 4, lives: 1, ranOut: 4 })
    await calibrations.close()
  })

  it('of more lives than are looked at are taken from valves spread over the register', async () => {
    const server = await aServer()
    for (let number = 1; number <= 6; number += 1) await sendLife(server, `BH-${number}`, 3)
    const shown = await new Calibrations(server.store, 4).of(server.siteId, 'replayed', server.now)
    expect(shown).toMatchObject({ valves: 6, valvesLookedAt: 4, overall: { lives: 4 } })
  })

  it('let the board be read while they are made', async () => {
    const server = await aServerWithPlant(62)
    const progress = { isDone: false }
    const asked = replayed(server).finally(() => (progress.isDone = true))
    const waits: number[] = []
    while (!progress.isDone) {
      const begun = performance.now()
      await server.expectOk('planner', showBoard)
      waits.push(performance.now() - begun)
      // A request through the network comes as an event of its own; one after the other without would leave no room for others.
      await pause(1)
    }
    await asked
    expect(waits.length).toBeGreaterThan(2)
    // Generous for a loaded machine; alone the longest is about a tenth of it.
    expect(Math.max(...waits)).toBeLessThan(1000)
  }, 60_000)
})

it('what is asked for is said or replayed, nothing else', async () => {
  const server = await aServer()
  const answer = await server.call('fitter', showCalibration, { query: { of: 'dreamt' as never } })
  expect(answer).toMatchObject({ ok: false, status: 422 })
})
