import { describe, expect, it } from 'vitest'
import { ph } from './acidity.ts'
import { cautionSentences } from './cautions.ts'
import { packingFamilies } from './families.ts'
import { fluidTraits } from './fluids.ts'
import { packingSources } from './sources.ts'

describe('the library of packing families', () => {
  it('has each name once, with every name the plant already uses', () => {
    const names = packingFamilies.map(({ name }) => name)
    expect(new Set(names).size).toBe(names.length)
    for (const used of [
      'graphite braid',
      'graphite die-formed',
      'PTFE braid',
      'aramid braid',
      'carbon braid',
      'natural fibre braid',
    ])
      expect(names).toContain(used)
  })

  it.each(packingFamilies.map((family) => [family.name, family] as const))(
    '%s: figures fit each other and name their source',
    (_, family) => {
      const { figures, cautions } = family
      expect(figures.lowestTemperature.value).toBeLessThan(figures.highestTemperature.value)
      expect(figures.lowestPh.value).toBeLessThan(figures.highestPh.value)
      for (const share of [figures.consolidation, figures.friction, figures.lateralRatio]) {
        expect(share.value).toBeGreaterThan(0)
        expect(share.value).toBeLessThan(1)
      }
      for (const { mark, source } of Object.values(figures)) {
        expect(packingSources.map(({ id }) => id)).toContain(source)
        expect(['from memory', 'common practice, no source', 'worked out']).toContain(mark)
      }
      for (const caution of cautions) expect(cautionSentences[caution]).toMatch(/\.$/)
    },
  )

  it('marks nothing as read, and only the lateral ratio of PTFE as worked out: 0.46 / 0.54 = 0.852', () => {
    const better = packingFamilies.flatMap(({ name, figures }) =>
      Object.entries(figures).flatMap(([figure, { mark }]) =>
        mark === 'worked out' || mark === 'read' ? [`${name}: ${figure}`] : [],
      ),
    )
    expect(better).toEqual(['PTFE braid: lateralRatio'])
    const lateral = packingFamilies.find(({ name }) => name === 'PTFE braid')?.figures.lateralRatio.value
    expect(lateral).toBeCloseTo(0.85185, 5)
  })

  it('warns of lead, of old packing and of hot PTFE', () => {
    const cautions = (wanted: string) => packingFamilies.find(({ name }) => name === wanted)?.cautions ?? []
    expect(cautions('lead-cased')).toEqual(expect.arrayContaining(['lead', 'asbestos suspect', 'dust']))
    expect(cautions('PTFE braid')).toContain('no smoking or hot work')
    expect(cautions('graphite die-formed')).toContain('corrodes stainless steel')
  })
})

describe('a fluid by its name (from memory: look-up only)', () => {
  it.each([
    ['Chlorine dioxide water', 'chlorine dioxide', true],
    ['hydrogen peroxide, 35 %', 'hydrogen peroxide', true],
    ['boiler feed water', 'feed water', false],
    ['sulphuric acid', 'sulphuric acid', null],
    ['SLUDGE, 4 to 7 %', 'sludge', false],
    ['boiled', null, null],
    ['foil', null, null],
    ['', null, null],
  ])('%s is known as %s', (fluid, knownAs, isOxidising) => {
    expect(fluidTraits(fluid)).toMatchObject({ knownAs, isOxidising })
  })

  it('has no pH that is no number', () => {
    expect(() => ph(NaN)).toThrow(RangeError)
    expect(fluidTraits('alum solution').ph).toEqual({ lowest: 2, highest: 4 })
  })
})
