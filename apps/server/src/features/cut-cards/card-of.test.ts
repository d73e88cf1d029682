import { CutCard } from '@glandkeeper/contract/cut-cards'
import { FamilyFigures, type SiteFamily } from '@glandkeeper/contract/packings'
import { type SettingKey, settings, type SettingValues } from '@glandkeeper/contract/settings'
import { cardDrawings } from '@glandkeeper/drawings/cut-card'
import { packingFamilies } from '@glandkeeper/engines/packing/families'
import { studThreads } from '@glandkeeper/engines/threads/stud-threads'
import { aValve, type ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { cardOf } from './card-of.ts'

const rules = Object.fromEntries(
  Object.keys(settings).map((key) => [key, settings[key as SettingKey].usually]),
) as unknown as SettingValues

function familyNamed(name: string | null): SiteFamily | null {
  const found = packingFamilies.find((family) => family.name === name)
  if (!found) return null
  const figures = Object.keys(FamilyFigures.shape).map((figure) => {
    const { value, mark } = found.figures[figure as keyof typeof found.figures]
    return [figure, { value, mark, confirmed: null }]
  })
  return {
    ...found,
    cautions: [...found.cautions],
    isOwn: false,
    revision: 0,
    figures: Object.fromEntries(figures) as SiteFamily['figures'],
  }
}

const cardFor = (overrides: ValveOverrides, family: string | null) =>
  cardOf({
    valve: { ...aValve(overrides), areaName: 'Board machine' },
    familyName: family,
    family: familyNamed(family),
    lastRings: null,
    rules,
    now: new Date('2026-05-04T09:00:00Z'),
    timeZone: 'Europe/London',
  })

const length = (min: number, max: number) => fc.option(fc.double({ min, max, noNaN: true }))
const glands = fc.record({
  boxBore: length(3, 600),
  stemDiameter: length(2, 500),
  boxDepth: length(3, 1500),
  noseLength: length(1, 500),
  studThread: fc.option(fc.constantFrom(...studThreads.map(({ designation }) => designation), 'M13')),
  studCount: fc.option(fc.integer({ min: 1, max: 24 })),
  studGrade: fc.constantFrom('4.6', '8.8', '12.9', 'B7', 'unknown'),
  lubrication: fc.constantFrom('dry', 'oiled', 'paste', 'unknown'),
})
const services = fc.record({
  pressure: fc.option(fc.double({ min: -1, max: 1000, noNaN: true })),
  temperature: fc.option(fc.double({ min: -273, max: 1000, noNaN: true })),
})
const families = fc.option(fc.constantFrom(...packingFamilies.map(({ name }) => name), 'other'))

it('of any valve the register takes a card is made that keeps the contract, and can be drawn', () => {
  fc.assert(
    fc.property(glands, services, families, (gland, service, family) => {
      const card = CutCard.parse(cardFor({ ...service, gland } as ValveOverrides, family))
      const drawings = cardDrawings(card, { section: 224, sectionHeight: 210, cord: 500 })
      const numbers = [drawings.section, drawings.cord, drawings.joints].flatMap((drawing) =>
        drawing ? [drawing.width, drawing.height] : [],
      )
      for (const number of numbers) expect(number).toBeGreaterThan(0)
      expect(JSON.stringify(drawings)).not.toMatch(/NaN|Infinity|null,null/)
    }),
    { numRuns: 300 },
  )
})

it('what is left out is always named: a card without length, count, gap or torque says why', () => {
  fc.assert(
    fc.property(glands, services, families, (gland, service, family) => {
      const card = cardFor({ ...service, gland } as ValveOverrides, family)
      const isPressed = card.cutNotes.some((note) => note.includes('come to size'))
      const isWhole = (card.cut !== null || isPressed) && card.rings !== null && card.gap !== null && card.load !== null
      if (!isWhole) expect(card.open.length).toBeGreaterThan(0)
    }),
  )
})

it.each([
  ['8.8', 'M12', null],
  ['8.8', 'M8', /^Stop: that is 87 % of the strength of studs of grade 8.8, above the limit of 70 %/],
  ['unknown', 'M12', /^Stop: the grade of the studs is not known; were it 4.6, this is 97 % of their strength/],
])('studs of grade %s, %s: 36 960 N on two of them', (studGrade, studThread, warning) => {
  const { load } = cardFor({ gland: { studGrade, studThread } as ValveOverrides['gland'] & object }, 'graphite braid')
  if (warning === null) expect(load?.warning).toBeNull()
  else expect(load?.warning).toMatch(warning)
})

it.each([
  ['8.8', 5, /^this packing wants 158 % of the strength of studs of grade 8.8: no torque is given/],
  ['unknown', 400, /^not even studs of grade 12.9 bear this load: no torque is given/],
])('two studs M6 of grade %s would be stretched at %i bar: no torque is given', (studGrade, pressure, says) => {
  const gland = { studGrade, studThread: 'M6' } as ValveOverrides['gland'] & object
  const card = cardFor({ pressure, gland }, 'graphite braid')
  expect(card.load).toBeNull()
  expect(card.open.at(-1)?.says).toMatch(says)
})

it('what an engine refuses is said in its own words: a bore of 27 mm round a stem of 28 mm, a box no ring fits', () => {
  const narrow = cardFor({ gland: { boxBore: 27 } }, 'graphite braid')
  expect(narrow.cord).toBeNull()
  expect(narrow.open).toContainEqual({
    what: 'box bore',
    says: 'the bore must be larger than the stem: 27 mm is not more than 28 mm',
  })
  const shallow = cardFor({ gland: { boxDepth: 8, noseLength: 7 } }, 'graphite braid')
  expect(shallow.rings).toBeNull()
  expect(shallow.open.map(({ says }) => says).join(' ')).toContain('no ring fits')
})
