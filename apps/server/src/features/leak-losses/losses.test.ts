import { addArea } from '@glandkeeper/contract/areas'
import { type FieldEvent, sendEvents } from '@glandkeeper/contract/events'
import { showLeakLosses } from '@glandkeeper/contract/leak-losses'
import { addLeakRule, monitorValves } from '@glandkeeper/contract/leak-rules'
import { confirmSetting, type SettingKey, settings } from '@glandkeeper/contract/settings'
import { retireValve } from '@glandkeeper/contract/valves'
import { aCorrection, aLeak, aNip, aReading } from '@glandkeeper/fixtures/a-reading'
import type { ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it, vi } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { add } from '../../../testing/valves-alike.ts'
import { examplesOffered } from '../leak-rules/index.ts'

/** Judged in the background: how long a busy machine may take. */
const SOON = { timeout: 15_000 }

async function aLeakingPlant() {
  const server = await aServer()
  const valve = async (tag: string, overrides: ValveOverrides = {}) => (await add(server, { tag, ...overrides })).valveId
  const send = (...events: FieldEvent[]) => server.expectOk('fitter', sendEvents, { body: { events } })
  const set = (key: SettingKey, value: number) =>
    server.expectOk('engineer', confirmSetting, { params: { key }, body: { seen: settings[key].usually, value } })
  const shown = () => server.expectOk('fitter', showLeakLosses)
  return { ...server, valve, send, set, shown }
}

const at = (day: string) => `${day}T08:00:00Z`
const steam: ValveOverrides = { phase: 'steam', pressure: 5, temperature: 159 }
const water: ValveOverrides = { phase: 'liquid', service: 'feed water', fluid: 'feed water', pressure: 5, temperature: 20 }
const air: ValveOverrides = { phase: 'gas', service: 'compressed air', fluid: 'air', pressure: 6, temperature: 20 }
const gas: ValveOverrides = { phase: 'gas', service: 'fuel gas', fluid: 'natural gas', pressure: 3, temperature: 20 }
const drops = (valveId: string, dropsPerMinute: number) =>
  aLeak({ valveId, takenAt: at('2026-05-01'), leak: 'drip', dropsPerMinute })
const hole = (valveId: string, opening: number) => aLeak({ valveId, takenAt: at('2026-05-01'), leak: 'run', opening })

describe('what an open leak loses', () => {
  it('60 drops a minute of a quarter of a millilitre are 0.9 kg/h, a fifth either way, and 14.40 a year at 2 for a cubic metre', async () => {
    const { valve, send, shown } = await aLeakingPlant()
    await send(drops(await valve('BH-1', water), 60))
    const { losses } = await shown()
    // 60 · 60 · 0.25 mL = 0.9 L; 0.9 kg/h · 8,000 h = 7.2 m³.
    expect(losses).toMatchObject([
      { tag: 'BH-1', method: 'drops counted', mark: 'worked out', care: null, grade: 'drip', carbonPerYear: null },
    ])
    expect(losses[0]?.kilogramsPerHour.middle).toBeCloseTo(0.9, 9)
    expect(losses[0]?.kilogramsPerHour.low).toBeCloseTo(0.72, 9)
    expect(losses[0]?.kilogramsPerHour.high).toBeCloseTo(1.08, 9)
    expect(losses[0]?.moneyPerYear?.middle).toBeCloseTo(14.4, 9)
  })

  it('steam through 1 mm at 5 bar is 2.48 kg/h by Napier, and costs by the tonne; carbon where a factor is set', async () => {
    const { valve, send, set, shown } = await aLeakingPlant()
    await set('carbonOfSteam', 200)
    await send(hole(await valve('BH-1', steam), 1))
    const [loss] = (await shown()).losses
    // 0.52444 · 0.785398 mm² · 6.01325 bar = 2.4768 kg/h; · 8,000 h = 19.81 t; · 30 and · 200 kg.
    expect(loss).toMatchObject({ method: 'steam through an opening', mark: 'from memory', care: null })
    expect(loss?.kilogramsPerHour.middle).toBeCloseTo(2.4768, 3)
    expect(loss?.kilogramsPerHour.low).toBeCloseTo(2.4768 * 0.49, 3)
    expect(loss?.moneyPerYear?.middle).toBeCloseTo(594.4, 0)
    expect(loss?.carbonPerYear?.middle).toBeCloseTo(3963, 0)
  })

  it('water through 1 mm at 5 bar is 54.5 kg/h', async () => {
    const { valve, send, shown } = await aLeakingPlant()
    await send(hole(await valve('BH-1', water), 1))
    // 0.61 · 0.785398e-6 m² · sqrt(2 · 5e5 / 998.2) m/s · 3,600 s · 998.2 kg/m³ = 54.49 kg/h.
    expect((await shown()).losses[0]).toMatchObject({ method: 'water through an opening', care: null })
    expect((await shown()).losses[0]?.kilogramsPerHour.middle).toBeCloseTo(54.49, 1)
  })

  it('air is priced by a thousand cubic metres of free air, another gas by the kilogram', async () => {
    const { valve, send, set, shown } = await aLeakingPlant()
    await send(hole(await valve('BH-1', air), 1), hole(await valve('BH-2', gas), 1))
    const [ofAir, ofGas] = (await shown()).losses
    // 101,325 Pa / (287.05 · 288.706 K) = 1.22265 kg/m³: a kilogram costs 25 / 1,000 / 1.22265.
    const kilograms = ofAir!.kilogramsPerHour.middle * 8000
    expect(ofAir?.moneyPerYear?.middle).toBeCloseTo((kilograms * 0.025) / 1.22265, 2)
    expect(ofGas).toMatchObject({
      tag: 'BH-2',
      moneyPerYear: null,
      care: 'counted as air: natural gas may be heavier or lighter',
    })
    await set('productPrice', 2)
    expect((await shown()).losses[1]?.moneyPerYear?.middle).toBeCloseTo(ofGas!.kilogramsPerHour.middle * 16_000, 6)
  })

  it('a screening value counts by the correlation of its rule, less background, and by another where no rule is', async () => {
    const { valve, send, shown, expectOk, store } = await aLeakingPlant()
    const [under, free] = [await valve('BH-1', gas), await valve('BH-2', gas)]
    const rule = { ...examplesOffered[0]!.rule, correlation: 'SOCMI gas valve' } as const
    const { ruleId } = await expectOk('engineer', addLeakRule, { body: { rule, exampleOf: null } })
    const body = { tags: ['BH-1'], ruleId, kind: 'ordinary' as const, note: '', since: '2026-01-01' }
    await expectOk('engineer', monitorValves, { body })
    await vi.waitFor(async () => expect((await store.read.valveMonitoring.findFirst())?.judgedFrom).toBe(10_000), SOON)
    const screened = { takenAt: at('2026-05-01'), screeningValue: 20_003, background: 3 }
    await send(aLeak({ valveId: under, leak: 'dry', ...screened }), aLeak({ valveId: free, leak: 'weep', ...screened }))
    const { losses, says } = await shown()
    const middle = (tag: string) => losses.find((loss) => loss.tag === tag)?.kilogramsPerHour.middle
    expect(middle('BH-1')).toBeCloseTo(1.87e-6 * 20_000 ** 0.873, 9)
    expect(middle('BH-2')).toBeCloseTo(2.29e-6 * 20_000 ** 0.746, 9)
    expect(losses[0]).toMatchObject({ method: 'screening correlation', mark: 'read', care: null, moneyPerYear: null })
    expect(says).toContain('2 leaks without a price: not in the money.')
  })

  it('a meter at its end counts with the factor published for that end, and says so', async () => {
    const { valve, send, shown } = await aLeakingPlant()
    const pegged = async (tag: string, screeningValue: number) =>
      aLeak({ valveId: await valve(tag, gas), takenAt: at('2026-05-01'), leak: 'weep', screeningValue, isPegged: true })
    await send(await pegged('BH-1', 100_000), await pegged('BH-2', 50_000), await pegged('BH-3', 10_000))
    const { losses } = await shown()
    expect(losses.map(({ tag, method, kilogramsPerHour }) => [tag, method, kilogramsPerHour.middle])).toEqual([
      ['BH-1', 'pegged factor', 0.14],
      ['BH-2', 'pegged factor', 0.064],
      ['BH-3', 'pegged factor', 0.064],
    ])
    expect(losses.map(({ care }) => care?.includes('at its end, 50000 ppmv'))).toEqual([false, true, false])
    expect(losses.every(({ care, mark }) => mark === 'from memory' && care?.includes('nobody knows'))).toBe(true)
  })

  it('is to be taken with care where the method does not know the fluid', async () => {
    const { valve, send, shown } = await aLeakingPlant()
    await send(
      drops(await valve('BH-1', { ...water, service: 'acid', fluid: 'sulphuric acid' }), 10),
      hole(await valve('BH-2', { ...steam, temperature: 300 }), 1),
      hole(await valve('BH-3', { ...water, temperature: 140 }), 1),
      hole(await valve('BH-4', { ...water, service: 'oil', fluid: 'fuel oil' }), 1),
    )
    const care = new Map((await shown()).losses.map((loss) => [loss.tag, loss.care]))
    expect(care.get('BH-1')).toBe('counted as water, 1 kg a litre: sulphuric acid may be heavier or lighter')
    expect(care.get('BH-2')).toMatch(/superheated, less of it passes/)
    expect(care.get('BH-3')).toMatch(/flashes/)
    expect(care.get('BH-4')).toBe('counted as water: fuel oil may pass more or less')
  })
})

describe('the figure of a leak', () => {
  it('is the last one while it leaked, as it stands; what was seen before, or dry, is none', async () => {
    const { valve, send, shown } = await aLeakingPlant()
    const valveId = await valve('BH-1', water)
    const seen = (day: string, leak: 'dry' | 'drip', more: object) => aLeak({ valveId, takenAt: at(day), leak, ...more })
    const last = seen('2026-05-02', 'drip', { dropsPerMinute: 40 })
    await send(
      seen('2026-01-01', 'drip', { dropsPerMinute: 90 }),
      aReading({ valveId, takenAt: at('2026-01-02') }),
      seen('2026-05-01', 'drip', { dropsPerMinute: 20 }),
      last,
      seen('2026-05-03', 'drip', {}),
    )
    const middle = async () => (await shown()).losses[0]?.kilogramsPerHour.middle
    expect(await middle()).toBeCloseTo(0.6, 9)
    expect((await shown()).losses[0]?.seenAt).toBe('2026-05-02T08:00:00.000Z')
    await send(aCorrection({ valveId, takenAt: at('2026-05-03'), corrects: last.id, replacement: null, reason: 'miscounted' }))
    expect(await middle()).toBeCloseTo(0.3, 9)
    // Tried at, and nobody has looked since: it is taken to leak on.
    await send(aNip({ valveId, takenAt: '2026-05-03T09:00:00Z', leakBefore: undefined, leakAfter: undefined }))
    expect(await middle()).toBeCloseTo(0.3, 9)
    await send(seen('2026-05-04', 'dry', { screeningValue: 5 }))
    expect((await shown()).losses).toEqual([])
  })

  it('is missing where nobody measured, no pressure is known, or it is too low; and a retired valve loses nothing', async () => {
    const { valve, send, shown, expectOk } = await aLeakingPlant()
    await send(
      aLeak({ valveId: await valve('BH-1'), takenAt: at('2026-05-01'), leak: 'weep', plume: 1 }),
      hole(await valve('BH-2', { ...steam, pressure: null }), 1),
      hole(await valve('BH-3', { ...steam, pressure: 0.3 }), 1),
      hole(await valve('BH-4', steam), 1),
    )
    await expectOk('planner', retireValve, { params: { tag: 'BH-4' }, body: { revision: 1, reason: 'gone' } })
    const { losses, withoutFigure, says, total } = await shown()
    expect(losses).toEqual([])
    expect(withoutFigure.map(({ tag, grade }) => `${tag} ${grade}`).toSorted()).toEqual(['BH-1 weep', 'BH-2 run', 'BH-3 run'])
    expect(total).toMatchObject({ leaks: 0, kilogramsPerHour: { middle: 0 }, moneyPerYear: null, carbonPerYear: null })
    expect(says).toContain('3 leaks without a figure: in none of the sums.')
    expect(says).toContain('Of these 2 with an opening: no pressure of the valve is known, or it is too low for the method.')
  })
})

it('sums by area and in all take the errors to be independent, and money only of what has a price', async () => {
  const { valve, send, set, shown, expectOk } = await aLeakingPlant()
  await expectOk('planner', addArea, { body: { code: 'AA', name: 'Elsewhere', walkPosition: 1, level: 0 } })
  await set('waterPrice', 0)
  await send(
    drops(await valve('BH-1', water), 60),
    drops(await valve('BH-2', water), 80),
    hole(await valve('AA-1', { ...steam, areaCode: 'AA' }), 1),
  )
  const { byArea, total, losses, says, hoursPerYear } = await shown()
  const ofSteam = losses.find(({ tag }) => tag === 'AA-1')!
  expect(byArea.map(({ areaCode, name, leaks }) => [areaCode, name, leaks])).toEqual([
    ['AA', 'Elsewhere', 1],
    ['BH', 'Boiler house', 2],
  ])
  // 0.9 and 1.2 kg/h, each a fifth either way: 2.1 and sqrt(0.18² + 0.24²) = 0.3.
  expect(byArea[1]?.kilogramsPerHour.middle).toBeCloseTo(2.1, 9)
  expect(byArea[1]?.kilogramsPerHour.high).toBeCloseTo(2.4, 9)
  expect(byArea[1]?.moneyPerYear).toBeNull()
  expect(total.leaks).toBe(3)
  expect(total.moneyPerYear?.middle).toBeCloseTo(ofSteam.moneyPerYear!.middle, 9)
  expect(losses.map(({ tag }) => tag)).toEqual(['AA-1', 'BH-2', 'BH-1'])
  expect(hoursPerYear).toBe(8000)
  expect(says).toContain('2 leaks without a price: not in the money.')
  expect(says).toContain('A year has 8,000 hours under pressure, as set, and each leak is taken to go on through all of them.')
})
