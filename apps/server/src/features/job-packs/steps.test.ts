import { type CutCard, showCutCard } from '@glandkeeper/contract/cut-cards'
import { sendEvents } from '@glandkeeper/contract/events'
import { aRepack } from '@glandkeeper/fixtures/a-reading'
import type { ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it } from 'vitest'
import { aServer, type TestServer } from '../../../testing/a-server.ts'
import { add } from '../../../testing/valves-alike.ts'
import { packingNeeds } from '../stock/index.ts'
import { drawnFromStore } from './drawn-from-store.ts'
import { stepsOf } from './steps.ts'

async function withCard(overrides: ValveOverrides, family: string | null): Promise<{ server: TestServer; card: CutCard }> {
  const server = await aServer()
  const { valveId } = await add(server, { tag: 'BH-1', ...overrides })
  const repack = aRepack({ valveId, takenAt: '2026-03-02T07:10:00Z', ...(family !== null && { family }) })
  if (family !== null) await server.expectOk('fitter', sendEvents, { body: { events: [repack] } })
  return { server, card: await server.expectOk('fitter', showCutCard, { params: { tag: 'BH-1' } }) }
}

const cardOf = async (overrides: ValveOverrides = {}, family: string | null = 'graphite braid') =>
  (await withCard(overrides, family)).card

const placeOf = (says: readonly string[], words: string) => says.findIndex((one) => one.includes(words))

describe('steps of a repack', () => {
  it('isolation before nuts, old rings before cutting, every ring at its joint, torque in steps, proof, follow-up', async () => {
    const card = await cardOf()
    const steps = stepsOf(card)
    const says = steps.map((step) => step.says)
    const inOrder = [
      'zero proved',
      'Nuts slackened',
      'All old rings out',
      'measured at three heights',
      'stem 28.0 mm and bore 45.0 mm',
      '6 rings cut as on the card, 114.7 mm each',
      'Loaded ring by ring',
      '9.0 N·m',
      '18.0 N·m',
      '29.9 N·m',
      'does not overrun',
      'handed back',
      'After 3 days',
    ].map((words) => placeOf(says, words.replaceAll(' mm', '\u00a0mm')))
    expect(inOrder).not.toContain(-1)
    expect(inOrder).toEqual(inOrder.toSorted((one, other) => one - other))
    expect(steps.find((step) => step.says.startsWith('Loaded'))?.ticks).toEqual([
      '1 at 12',
      '2 at 3',
      '3 at 6',
      '4 at 9',
      '5 at 12',
      '6 at 3',
    ])
    for (const words of [...card.proof, ...card.followUp]) expect(says).toContain(words)
  })

  it('pressed rings are laid out and not cut', async () => {
    const says = stepsOf(await cardOf({}, 'graphite die-formed')).map((step) => step.says)
    expect(placeOf(says, 'as pressed')).toBeGreaterThan(0)
    expect(placeOf(says, 'cut as on the card')).toBe(-1)
  })

  it('what is not known is asked for before it is done', async () => {
    const says = stepsOf(await cardOf({ gland: { boxBore: null } }, null)).map((step) => step.says)
    expect(placeOf(says, 'Ask before anything is cut')).toBeGreaterThan(0)
    expect(placeOf(says, 'The torque is not worked out')).toBeGreaterThan(0)
    expect(says.join()).not.toMatch(/N·m|null|NaN|undefined/)
  })
})

describe('what is drawn from the store', () => {
  async function drawnFor(overrides: ValveOverrides = {}, family: string | null = 'graphite braid') {
    const { server, card } = await withCard(overrides, family)
    const valve = await server.store.read.valve.findFirst()
    const needs = await packingNeeds(server.store.read, server.siteId, [valve!.id])
    return drawnFromStore(card, needs.get(valve!.id)!)
  }

  it('cord, as its kit has it: 8 wraps of 113.1 mm and 10 % are 1.00 m of 8 mm; then studs, paste, spanner and bar', async () => {
    const [packing, ...others] = await drawnFor({ gland: { boxBore: 44 } })
    expect(packing).toMatchObject({ figure: '1\u00a0m', hasBatch: true })
    expect(packing?.says.replaceAll('\u00a0', ' ')).toMatch(/^graphite braid, 8 mm: 8 mm cord fits.*8 wraps in one piece/)
    expect(others.map(({ figure }) => figure)).toEqual([null, '', '1', '1'])
    expect(others.map(({ says }) => says).join()).toMatch(/2 studs, M12, grade 8\.8.*paste.*18 mm.*bar of 28\.0/)
    expect(others.some(({ hasBatch }) => hasBatch)).toBe(false)
  })

  it('pressed rings are counted', async () => {
    const [packing] = await drawnFor({}, 'graphite die-formed')
    expect(packing).toMatchObject({ figure: expect.stringMatching(/^\d+\u00a0pieces$/), hasBatch: true })
  })

  it.each([
    ['packing', {}, null],
    ['bore', { gland: { boxBore: null } }, 'graphite braid'],
    ['a cord that fits', {}, 'graphite braid'],
  ] as const)('without %s there is a line to write on', async (_, overrides, family) => {
    expect((await drawnFor(overrides, family))[0]).toMatchObject({ figure: null, hasBatch: true })
  })
})
