import { setTimeout as pause } from 'node:timers/promises'
import { showBoard } from '@glandkeeper/contract/board'
import { askForFit, showFit } from '@glandkeeper/contract/forecasts'
import { describe, expect, it } from 'vitest'
import { aServerWithPlant, fitted } from '../../../testing/a-plant.ts'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { statesThatDiffer } from '../glands/index.ts'

const fitsOf = ({ store }: TestServer) => store.read.wearFit.findMany({ orderBy: [{ fittedAt: 'asc' }, { id: 'asc' }] })
const causesOf = async (server: TestServer) => (await fitsOf(server)).map(({ cause }) => cause)

describe('the fit after an import', () => {
  it('is kept with its date, what it rests on and how good it is, and every state is made from it', async () => {
    const server = await aServerWithPlant(62)
    const newest = (await fitsOf(server)).at(-1)
    expect(newest).toMatchObject({ cause: 'after an import', fittedAt: server.now })
    const { fit, running } = await server.expectOk('fitter', showFit)
    expect(running).toBeNull()
    expect(fit).toMatchObject({ cause: 'after an import', fittedAt: server.now.toISOString(), hasConverged: true })
    expect(fit?.lives).toBeGreaterThanOrEqual(40)
    expect(fit?.readings).toBeGreaterThan(500)
    expect(fit?.lastReadingsWithin80).toBeGreaterThan(0.6)
    expect(fit?.readingDeviation).toBeLessThan(1)
    expect(fit?.groups.some(({ lives, ratePerYear, leaks }) => lives > 1 && ratePerYear !== null && leaks > 0)).toBe(true)

    const states = await server.store.read.valveState.findMany({ select: { fitId: true, entryCount: true, forecast: true } })
    expect(states).toHaveLength(62)
    expect(new Set(states.map(({ fitId }) => fitId))).toEqual(new Set([newest?.id]))
    expect(states.filter(({ forecast }) => forecast !== null).length).toBeGreaterThan(30)
    const differing = []
    for await (const each of statesThatDiffer(server.store.read, server.siteId, server.now)) differing.push(each)
    expect(differing).toEqual([])
  }, 60_000)

  it('of the same lives is the same to the last digit, and the one before stays', async () => {
    const server = await aServerWithPlant(25)
    const before = await fitsOf(server)
    await server.fits.ask(server.siteId, 'asked for')
    const after = await fitsOf(server)
    expect(after.slice(0, -1)).toEqual(before)
    expect(after.at(-1)?.body).toBe(before.at(-1)?.body)
  }, 60_000)

  it('lets the board be read while it runs, and tells how far it is', async () => {
    const server = await aServerWithPlant(62)
    const shares: number[] = []
    const done = server.fits.ask(server.siteId, 'asked for')
    let answers = 0
    for (let now = server.fits.progressOf(server.siteId); now !== null; now = server.fits.progressOf(server.siteId)) {
      shares.push(now)
      const board = await server.expectOk('fitter', showBoard, { query: {} })
      if (server.fits.progressOf(server.siteId) !== null) answers += 1
      expect(board.rows.length).toBeGreaterThan(0)
      // A request through the network comes as an event of its own; here nothing else would leave room for others.
      await pause(1)
    }
    await done
    expect(answers).toBeGreaterThan(2)
    expect(shares).toEqual(shares.toSorted((one, other) => one - other))
  }, 60_000)
})

describe('a fit asked for', () => {
  it('is begun for planner and engineer, refused to a fitter, and shown as running', async () => {
    const server = await aServer()
    expect(await server.call('fitter', askForFit)).toMatchObject({ ok: false, status: 403 })
    expect(await server.expectOk('fitter', showFit)).toEqual({ fit: null, running: null })
    expect(await server.expectOk('engineer', askForFit)).toEqual({ fit: null, running: 0 })
    await fitted(server)
    expect((await server.expectOk('planner', showFit)).fit).toMatchObject({ cause: 'asked for', lives: 0, groups: [] })
  })

  it('again while one runs comes once more after it, however often it was asked', async () => {
    const server = await aServer()
    const first = server.fits.ask(server.siteId, 'nightly')
    const more = [1, 2, 3].map(() => server.fits.ask(server.siteId, 'asked for'))
    await Promise.all([first, ...more])
    expect(await causesOf(server)).toEqual(['nightly', 'asked for'])
    expect(server.fits.progressOf(server.siteId)).toBeNull()
  })

  it('ends when the server closes, and leaves nothing half done', async () => {
    const server = await aServer()
    const asked = server.fits.ask(server.siteId, 'asked for')
    // The worker has its job by then, and cannot be done.
    await pause(0)
    expect(server.fits.progressOf(server.siteId)).not.toBeNull()
    await server.fits.close()
    await asked
    expect(await causesOf(server)).toEqual([])
    expect(server.fits.progressOf(server.siteId)).toBeNull()
  })
})

describe('the fit of the night', () => {
  it('is made once a day from two in the morning by the clock of the site, and made up for when the night was missed', async () => {
    let now = new Date('2026-05-04T00:30:00Z')
    const server = await aServer({ clock: () => now })
    const fitsBy = async (moment: string) => {
      now = new Date(moment)
      await server.fits.fitsOfTheNight()
      return (await fitsOf(server)).map(({ fittedAt }) => fittedAt.toISOString())
    }
    // Summer time: half past midnight in UTC is half past one in London.
    expect(await fitsBy('2026-05-04T00:30:00Z')).toEqual([])
    const first = '2026-05-04T01:05:00.000Z'
    expect(await fitsBy(first)).toEqual([first])
    expect(await fitsBy('2026-05-04T01:15:00Z')).toEqual([first])
    expect(await fitsBy('2026-05-04T22:55:00Z')).toEqual([first])
    // Past midnight at the site, though not in UTC: a new day, but not yet two o'clock.
    expect(await fitsBy('2026-05-04T23:30:00Z')).toEqual([first])
    const late = '2026-05-05T14:00:00.000Z'
    expect(await fitsBy(late)).toEqual([first, late])
    expect(await causesOf(server)).toEqual(['nightly', 'nightly'])
  })
})
