import { bar, celsius, days, ratio } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ph } from './acidity.ts'
import { packingFamilies } from './families.ts'
import { judgeFamily, type JudgedFamily, mostUsed, rankFamilies, type Service } from './suitability.ts'

const plain = packingFamilies.map(({ figures, ...family }) => ({
  ...family,
  figures: Object.fromEntries(
    Object.entries(figures).map(([name, { value }]) => [name, value]),
  ) as unknown as JudgedFamily['figures'],
}))
const named = (name: string) => {
  const found = plain.find((family) => family.name === name)
  if (!found) throw new Error(name)
  return found
}
/** A made-up braid with round limits, so that these tests do not move with the library. */
const round: JudgedFamily = {
  ...named('PTFE braid'),
  figures: {
    ...named('PTFE braid').figures,
    lowestTemperature: celsius(-100),
    highestTemperature: celsius(300),
    highestSteamTemperature: celsius(200),
    highestPressure: bar(100),
    lowestPh: ph(4),
    highestPh: ph(10),
  },
}
const warmWater: Service = {
  temperature: celsius(60),
  pressure: bar(6),
  phase: 'liquid',
  ph: { lowest: ph(6), highest: ph(8) },
  isOxidising: false,
  stemMovement: null,
}
const verdict = (service: Partial<Service>, family: JudgedFamily = round) => {
  const judged = judgeFamily({ ...warmWater, ...service, family })
  return judged.ok ? judged : judged.problem
}

describe('a family in a service', () => {
  it('at 250 °C of −100 to 300 and 40 of 100 bar: three quarters of the way from 100 to 300, four tenths of the pressure', () => {
    expect(verdict({ temperature: celsius(250), pressure: bar(40) })).toMatchObject({
      verdict: 'suitable',
      reasons: [
        { code: 'temperature/within', used: 0.75, detail: '250\u00a0°C of −100\u00a0°C to 300\u00a0°C: 50\u00a0°C to spare' },
        { code: 'pressure/within', used: 0.4, detail: '40\u00a0bar of at most 100\u00a0bar: 60\u00a0bar to spare' },
        { code: 'acidity/within', used: 1 / 3 },
      ],
    })
  })

  it.each<[string, Partial<Service>, string, string]>([
    ['at its limit is suitable and near it', { temperature: celsius(300) }, 'suitable', 'temperature/near'],
    ['a degree over is outside', { temperature: celsius(301) }, 'outside its limits', 'temperature/over'],
    ['a degree under the lowest is outside', { temperature: celsius(-101) }, 'outside its limits', 'temperature/under'],
    ['in steam has the limit for steam', { temperature: celsius(201), phase: 'steam' }, 'outside its limits', 'temperature/over'],
    ['at 101 of 100 bar is outside', { pressure: bar(101) }, 'outside its limits', 'pressure/over'],
    ['at 95 of 100 bar is near', { pressure: bar(95) }, 'suitable', 'pressure/near'],
    ['under vacuum uses no pressure', { pressure: bar(-0.9) }, 'suitable', 'temperature/within'],
    ['without a temperature is not known', { temperature: null }, 'not known', 'temperature/not-known'],
    ['without a pressure is not known', { pressure: null }, 'not known', 'pressure/not-known'],
    [
      'too hot is outside even without a pressure',
      { temperature: celsius(400), pressure: null },
      'outside its limits',
      'temperature/over',
    ],
    ['in acid is outside', { ph: { lowest: ph(1), highest: ph(2) } }, 'outside its limits', 'acidity/outside'],
    ['in caustic is outside', { ph: { lowest: ph(9), highest: ph(12) } }, 'outside its limits', 'acidity/outside'],
    ['without a pH is not known where it matters', { ph: null }, 'not known', 'acidity/not-known'],
    ['in steam needs no pH', { ph: null, phase: 'steam' }, 'suitable', 'temperature/within'],
    ['in a gas is judged without a pH', { ph: null, phase: 'gas' }, 'suitable', 'temperature/within'],
  ])('%s', (_, service, expected, first) => {
    const judged = judgeFamily({ ...warmWater, ...service, family: round })
    expect(judged.ok && [judged.verdict, judged.reasons[0]?.code]).toEqual([expected, first])
  })

  it('that stands any pH needs none recorded, and one that burns is outside in an oxidising fluid', () => {
    expect(verdict({ ph: null }, named('PTFE braid'))).toMatchObject({ verdict: 'suitable' })
    expect(verdict({ isOxidising: true }, named('graphite braid'))).toMatchObject({ verdict: 'outside its limits' })
    expect(verdict({ isOxidising: true }, named('PTFE braid'))).toMatchObject({ verdict: 'suitable' })
    expect(verdict({ isOxidising: null }, named('graphite braid'))).toMatchObject({ verdict: 'suitable' })
  })

  it('says what the stem does to it, and that old stock is old', () => {
    const codes = (family: string, stemMovement: Service['stemMovement']) => {
      const judged = judgeFamily({ ...warmWater, stemMovement, family: named(family) })
      return judged.ok ? judged.reasons.filter(({ standing }) => standing === 'note').map(({ code }) => code) : []
    }
    expect(codes('wire-reinforced graphite braid', 'turning')).toEqual(['stem/turns-in-wire'])
    expect(codes('wire-reinforced graphite braid', 'rising')).toEqual([])
    expect(codes('graphite die-formed', 'rising')).toEqual(['stem/wiped-by-end-rings'])
    expect(codes('lead-cased', null)).toEqual(['family/old-stock'])
  })

  it('has used most where it has used most: three quarters of its heat', () => {
    const judged = judgeFamily({ ...warmWater, temperature: celsius(250), pressure: bar(40), family: round })
    expect(judged.ok && mostUsed(judged)).toBe(0.75)
    expect(mostUsed({ verdict: 'not known', reasons: [] })).toBeNull()
  })

  it.each([
    ['highestTemperature', { highestTemperature: celsius(-100) }],
    ['highestSteamTemperature', { highestSteamTemperature: celsius(-200) }],
    ['highestPressure', { highestPressure: bar(0) }],
    ['highestPh', { highestPh: ph(4) }],
    ['highestPressure', { highestPressure: NaN as never }],
    ['highestTemperature', { lowestTemperature: -Infinity as never }],
  ])('with a crossed %s is refused', (field, figures) => {
    expect(verdict({}, { ...round, figures: { ...round.figures, ...figures } })).toMatchObject({
      code: 'family/limits-crossed',
      field,
    })
  })
})

it.each([
  ['temperature', { temperature: NaN as never }],
  ['pressure', { pressure: Infinity as never }],
  ['ph', { ph: { lowest: NaN as never, highest: ph(7) } }],
  ['temperature', { temperature: 1e308 as never }],
])('a %s that is no figure, or too large to compare, is refused', (field, service) => {
  expect(
    verdict(service, {
      ...round,
      figures: { ...round.figures, highestTemperature: celsius(1e-300), lowestTemperature: celsius(0) },
    }),
  ).toMatchObject({
    code: 'number/out-of-range',
    field,
  })
})

const anything = fc.double() as fc.Arbitrary<never>

describe('whatever the figures are', () => {
  it('the answer is finite, or a named problem', () => {
    fc.assert(
      fc.property(
        anything,
        anything,
        anything,
        anything,
        anything,
        fc.boolean(),
        (temperature, pressure, lowest, highest, limit, isSteam) => {
          const figures = {
            ...round.figures,
            lowestTemperature: lowest,
            highestTemperature: highest,
            highestSteamTemperature: highest,
            highestPressure: limit,
          }
          const judged = judgeFamily({
            ...warmWater,
            temperature,
            pressure,
            ph: { lowest: temperature, highest: pressure },
            phase: isSteam ? 'steam' : 'liquid',
            family: { ...round, figures },
          })
          if (!judged.ok) {
            expect(judged.problem.code).toMatch(/^(family|number)\//)
            return
          }
          for (const { used, detail } of judged.reasons) {
            expect(used === null || Number.isFinite(used)).toBe(true)
            expect(detail).not.toMatch(/NaN|Infinity/)
          }
        },
      ),
      { numRuns: 2000 },
    )
  })

  it('more pressure never makes a family more suitable, nor does less knowledge', () => {
    const order = ['suitable', 'not known', 'outside its limits']
    const rank = (service: Partial<Service>) => order.indexOf((verdict(service) as { verdict: string }).verdict)
    fc.assert(
      fc.property(fc.double({ min: -1, max: 500, noNaN: true }), fc.double({ min: 0, max: 500, noNaN: true }), (low, more) => {
        expect(rank({ pressure: bar(low + more) })).toBeGreaterThanOrEqual(rank({ pressure: bar(low) }))
      }),
    )
    expect(rank({ pressure: null })).toBeGreaterThan(rank({ pressure: bar(1) }))
  })

  it('a bare number or a wrong unit does not compile', () => {
    // @ts-expect-error a bare number
    void (() => judgeFamily({ ...warmWater, family: round, temperature: 60 }))
    // @ts-expect-error °C where bar belongs
    void (() => judgeFamily({ ...warmWater, family: round, pressure: celsius(6) }))
    expect(true).toBe(true)
  })
})

describe('the families ranked for a valve', () => {
  const names = (service: Partial<Service>) => {
    const ranked = rankFamilies({ ...warmWater, ...service, families: plain })
    if (!ranked.ok) throw new Error(ranked.problem.detail)
    return ranked.ranking.filter((family) => family.verdict === 'suitable').map((family) => family.name)
  }

  it('keep old stock behind what is put in today, and every family in the list', () => {
    const ranked = rankFamilies({ ...warmWater, families: plain })
    const order = ranked.ok ? ranked.ranking.map(({ name }) => name) : []
    expect(order.toSorted()).toEqual(plain.map(({ name }) => name).toSorted())
    expect(names({ temperature: celsius(20) }).slice(-2)).toEqual(['lead-cased', 'leather-cased'])
  })

  it('leave graphite and carbon only in steam of 410 °C, and PTFE only in chlorine dioxide (from memory: arithmetic only)', () => {
    expect(names({ temperature: celsius(410), pressure: bar(44), phase: 'steam', ph: null }).toSorted()).toEqual([
      'carbon braid',
      'graphite braid',
      'graphite die-formed',
      'wire-reinforced graphite braid',
    ])
    expect(names({ ph: { lowest: ph(2), highest: ph(4) }, isOxidising: true })).toEqual(['PTFE braid'])
  })

  it('are none suitable where the temperature is not known', () => {
    expect(names({ temperature: null })).toEqual([])
  })

  it('put a longer life first, and one far from its limits before one near them', () => {
    const own = (name: string, life: number, friction: number, limit: number) => ({
      ...round,
      name,
      figures: { ...round.figures, usualLife: days(life), friction: ratio(friction), highestPressure: bar(limit) },
    })
    const families = [
      own('short', 400, 0.1, 90),
      own('near', 900, 0.1, 6.1),
      own('rough', 800, 0.2, 90),
      own('long', 800, 0.1, 90),
    ]
    const ranked = rankFamilies({ ...warmWater, families })
    expect(ranked.ok && ranked.ranking.map(({ name }) => name)).toEqual(['long', 'rough', 'short', 'near'])
  })

  it('name the family that contradicts itself', () => {
    const crossed = { ...round, name: 'ours', figures: { ...round.figures, highestPressure: bar(-1) } }
    expect(rankFamilies({ ...warmWater, families: [crossed] })).toMatchObject({
      ok: false,
      problem: { code: 'family/limits-crossed', field: 'families' },
    })
  })
})
