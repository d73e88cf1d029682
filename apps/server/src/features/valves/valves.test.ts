import { showBoard } from '@glandkeeper/contract/board'
import { sendEvents } from '@glandkeeper/contract/events'
import { addValve, changeValve, retireValve, showValve } from '@glandkeeper/contract/valves'
import { aReading } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'

const valve = (overrides: Parameters<typeof aValve>[0] = {}) => aValve({ areaCode: 'BH', tag: 'BH-1', ...overrides })

describe('adding a valve', () => {
  it('puts it in the register and on the board, before anybody has been there', async () => {
    const server = await aServer()
    const added = await server.expectOk('planner', addValve, { body: valve() })
    expect(added).toMatchObject({ tag: 'BH-1', revision: 1, areaName: 'Boiler house', gland: { boxBore: 45, stemDiameter: 28 } })
    const board = await server.expectOk('fitter', showBoard, { query: {} })
    expect(board.rows[0]).toMatchObject({
      tag: 'BH-1',
      reserve: null,
      standing: 'watch',
      why: 'nobody has entered anything yet: measure both gaps',
    })
  })

  it('refuses a bore smaller than the stem and an unknown thread, each with its place, and writes nothing', async () => {
    const server = await aServer()
    const answer = await server.call('planner', addValve, {
      body: valve({ gland: { boxBore: 20, stemDiameter: 22, studThread: 'M13' } }),
    })
    expect(answer).toMatchObject({
      status: 422,
      problem: {
        code: 'valve/impossible-gland',
        errors: [
          { pointer: '#/gland/boxBore', detail: 'a bore of 20 mm is not larger than a stem of 22 mm' },
          { pointer: '#/gland/studThread' },
        ],
      },
    })
    expect(await server.store.read.valve.count()).toBe(0)
  })

  it('names every fault of a body at once, a misspelt field and a figure that is no number among them', async () => {
    const server = await aServer()
    const { service: _, ...rest } = valve()
    const body = { ...rest, sevice: 'steam', walkPosition: 1.5, gland: { ...rest.gland, boxBore: 'NaN', keepClear: 900 } }
    const answer = await server.call('planner', addValve, { body: body as never })
    const pointers = answer.ok ? [] : (answer.problem.errors ?? []).map((fault) => fault.pointer)
    expect(answer.status).toBe(422)
    expect(pointers.toSorted()).toEqual(['#/gland/boxBore', '#/gland/keepClear', '#/service', '#/sevice', '#/walkPosition'])
  })

  it('refuses a tag that is taken and an area that does not exist', async () => {
    const server = await aServer()
    await server.expectOk('planner', addValve, { body: valve() })
    expect(await server.call('planner', addValve, { body: valve() })).toMatchObject({
      status: 409,
      problem: { code: 'valve/tag-taken' },
    })
    expect(await server.call('planner', addValve, { body: valve({ tag: 'BH-2', areaCode: 'XX' }) })).toMatchObject({
      status: 404,
      problem: { code: 'area/unknown' },
    })
  })
})

describe('changing a valve', () => {
  it('moves its reserve with its dimensions and keeps who changed what', async () => {
    const server = await aServer()
    const { valveId } = await server.expectOk('planner', addValve, { body: valve() })
    await server.expectOk('fitter', sendEvents, {
      body: { events: [aReading({ valveId, takenAt: '2026-05-01T08:00:00Z', gapLeft: 7.4, gapRight: 6.6 })] },
    })
    await server.expectOk('engineer', changeValve, {
      params: { tag: 'BH-1' },
      body: { revision: 1, valve: valve({ gland: { keepClear: 4 } }) },
    })
    const history = await server.expectOk('fitter', showValve, { params: { tag: 'BH-1' } })
    expect(history.state.reserve).toBeCloseTo(2.6, 9)
    expect(history.registerChanges[0]).toMatchObject({
      by: 'The engineer',
      what: 'valve changed',
      changes: [{ field: 'keepClear', before: '3', after: '4' }],
    })
  })

  it('is refused when somebody else changed it meanwhile', async () => {
    const server = await aServer()
    await server.expectOk('planner', addValve, { body: valve() })
    await server.expectOk('planner', changeValve, {
      params: { tag: 'BH-1' },
      body: { revision: 1, valve: valve({ description: 'Feed pump 2' }) },
    })
    const late = await server.call('engineer', changeValve, {
      params: { tag: 'BH-1' },
      body: { revision: 1, valve: valve({ description: 'Feed pump 3' }) },
    })
    expect(late).toMatchObject({ status: 409, problem: { code: 'valve/changed-meanwhile' } })
    expect((await server.expectOk('planner', showValve, { params: { tag: 'BH-1' } })).valve.description).toBe('Feed pump 2')
  })
})

it('a retired valve leaves the board and keeps its history', async () => {
  const server = await aServer()
  await server.expectOk('planner', addValve, { body: valve() })
  await server.expectOk('planner', retireValve, { params: { tag: 'BH-1' }, body: { revision: 1, reason: 'line taken out' } })
  expect((await server.expectOk('planner', showBoard, { query: {} })).total).toBe(0)
  const history = await server.expectOk('planner', showValve, { params: { tag: 'BH-1' } })
  expect(history.valve.retiredAt).toBe(server.now.toISOString())
  expect(history.registerChanges[0]?.changes).toEqual([{ field: 'retired', before: 'no', after: 'line taken out' }])
})

it('of many people who change one revision at the same moment, one succeeds and the others are told', async () => {
  const server = await aServer()
  await server.expectOk('planner', addValve, { body: valve() })
  const answers = await Promise.all(
    [...Array(8).keys()].map((n) =>
      server.call('planner', changeValve, {
        params: { tag: 'BH-1' },
        body: { revision: 1, valve: valve({ description: `change ${n}` }) },
      }),
    ),
  )
  expect(answers.map((answer) => answer.status).toSorted((a, b) => a - b)).toEqual([200, 409, 409, 409, 409, 409, 409, 409])
})
