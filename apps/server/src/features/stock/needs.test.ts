import { showCutCard } from '@glandkeeper/contract/cut-cards'
import { confirmSetting } from '@glandkeeper/contract/settings'
import { describe, expect, it } from 'vitest'
import { aServerWithPlant } from '../../../testing/a-plant.ts'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { packed } from '../../../testing/packed-valve.ts'
import { add } from '../../../testing/valves-alike.ts'
import { needInWords, packingNeeds } from './index.ts'
import { notKnownOf } from '../cut-cards/index.ts'

const needsOf = (server: TestServer, ...valveIds: string[]) => packingNeeds(server.store.read, server.siteId, valveIds)

describe('what a repack takes from the store', () => {
  it('cord: 1 + floor((45 - 8) / 5.8) = 7 rings of π · 36 = 113.1 mm, 8 wraps in one piece of 904.8 mm, a tenth more: 0.995 m', async () => {
    const server = await aServer()
    const valveId = await packed(server, 'BH-1', 'graphite braid')
    const need = (await needsOf(server, valveId)).get(valveId)
    if (!need || 'open' in need || need.kind !== 'cord') throw new Error(JSON.stringify(need))
    expect(need).toMatchObject({
      family: 'graphite braid',
      sectionMm: 8,
      designation: '8 mm',
      stemDiameterMm: 28,
      rings: 7,
      wraps: 8,
    })
    expect(need.ringLengthMm).toBeCloseTo(113.097, 3)
    expect(need.pieceMm).toBeCloseTo(904.779, 3)
    expect(need.metres).toBeCloseTo(0.99526, 5)
    expect(needInWords(need)).toBe('7 rings of graphite braid, 8\u00a0mm, 1\u00a0m')
  })

  it('follows the share of waste that the site has put down', async () => {
    const server = await aServer()
    const valveId = await packed(server, 'BH-1', 'graphite braid')
    await server.expectOk('planner', confirmSetting, { params: { key: 'cordWaste' }, body: { seen: 0.1, value: 0.2 } })
    expect((await needsOf(server, valveId)).get(valveId)).toMatchObject({ metres: expect.closeTo(1.08573, 5) as number })
  })

  it('pressed rings are counted: 1 + floor((45 - 8) / 6.56) = 6', async () => {
    const server = await aServer()
    const valveId = await packed(server, 'BH-1', 'graphite die-formed')
    const need = (await needsOf(server, valveId)).get(valveId)
    expect(need).toEqual({ kind: 'die-formed ring', family: 'graphite die-formed', boxBoreMm: 44, stemDiameterMm: 28, rings: 6 })
    expect(need && !('open' in need) && needInWords(need)).toBe(
      '6 pressed rings of graphite die-formed, stem 28.0\u00a0mm in bore 44.0\u00a0mm',
    )
  })

  it('an inch cord is told in mm beside', async () => {
    const server = await aServer()
    const valveId = await packed(server, 'BH-1', 'graphite braid', { gland: { boxBore: 34.9, stemDiameter: 19.1 } })
    const need = (await needsOf(server, valveId)).get(valveId)
    expect(need).toMatchObject({ designation: '5/16 in', sectionMm: 7.9375 })
    expect(need && !('open' in need) && needInWords(need)).toContain('graphite braid, 5/16\u00a0in\u00a0(7.9\u00a0mm), ')
  })

  it('is open where it cannot be known, and says why', async () => {
    const server = await aServer()
    const neverPacked = (await add(server, { tag: 'BH-1' })).valveId
    const cases = [
      [neverPacked, 'packing not known'],
      [await packed(server, 'BH-2', 'some old rope'), 'packing not known'],
      [await packed(server, 'BH-3', 'graphite braid', { gland: { boxBore: null } }), 'bore or stem not measured'],
      [await packed(server, 'BH-4', 'graphite braid', { gland: { noseLength: null } }), 'box depth or nose not measured'],
      [await packed(server, 'BH-5', 'graphite braid', { gland: { boxBore: 45 } }), 'no listed cord fits a space of 8.5\u00a0mm'],
    ] as const
    const needs = await needsOf(server, ...cases.map(([valveId]) => valveId))
    for (const [valveId, open] of cases) expect(needs.get(valveId)).toEqual({ open })
  })
})

it('is what the cut card has, valve by valve, without reading an entry', async () => {
  const server = await aServerWithPlant(25)
  const valves = await server.store.read.valve.findMany({ select: { id: true, tag: true } })
  const needs = await needsOf(server, ...valves.map(({ id }) => id))
  expect(needs.size).toBe(25)
  let known = 0
  for (const { id, tag } of valves) {
    const card = await server.expectOk('fitter', showCutCard, { params: { tag } })
    const need = needs.get(id)
    if (!need || 'open' in need) {
      expect([tag, notKnownOf(card) !== null || card.cord?.designation === null]).toEqual([tag, true])
      continue
    }
    known += 1
    expect([tag, need.family, need.rings]).toEqual([tag, card.family, card.rings?.count])
    if (need.kind === 'cord')
      expect([need.designation, need.ringLengthMm, need.wraps]).toEqual([
        card.cord?.designation,
        card.cut?.length,
        card.cut?.wraps,
      ])
  }
  expect(known).toBeGreaterThan(10)
})
