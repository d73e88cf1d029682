import { CutCard } from '@glandkeeper/contract/cut-cards'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { degrees, mm } from '@glandkeeper/units/quantity'
import { describe, expect, test } from 'vitest'
import { checkRuler } from './check-ruler.ts'
import { cardDrawings, PX_PER_MILLIMETRE } from './cut-card.ts'
import {
  cordHeading,
  jointsInWords,
  mainFigures,
  remarksOf,
  serviceInWords,
  spannersInWords,
  studsInWords,
} from './cut-card-words.ts'
import type { Drawing } from './drawing.ts'
import { jointsDrawing } from './joints.ts'

const { gland } = aValve()
const aCard = (overrides: Readonly<Record<string, unknown>> = {}) =>
  CutCard.parse({
    tag: 'BM-3307',
    description: 'Condensate return, group 1',
    areaName: 'Board machine',
    service: 'condensate',
    fluid: 'condensate',
    phase: 'liquid',
    temperature: 118,
    pressure: 3,
    madeOn: '2026-06-09',
    family: 'graphite braid',
    form: 'braided',
    gland,
    cord: { space: 8.5, designation: null, size: null, rollTo: null, says: 'no listed cord fits' },
    rings: { count: 5, says: [] },
    cut: { angle: 45, length: 114.668, mandrel: 28, wraps: 6 },
    cutNotes: [],
    joints: [0, 90, 180, 270, 0].map((angle, ring) => ({ ring: ring + 1, angle, clock: ['12', '3', '6', '9', '12'][ring] })),
    jointNotes: ['Ring 1 goes in first, joint at 12.'],
    gap: { expected: 12, least: 11.4, most: 12.6, below: 'Low.', above: 'High.', says: [] },
    load: null,
    steps: [],
    proof: [],
    followUp: [],
    spanners: [
      { marking: '18 mm', acrossFlats: 18, hexagon: 'present size' },
      { marking: '19 mm', acrossFlats: 19, hexagon: 'nuts made before 1982' },
    ],
    threadCautions: [],
    hazards: [],
    cautions: [],
    open: [],
    basis: '',
    ...overrides,
  })
/** 96 px are an inch. */
const PX_OF_A_MILLIMETRE = 96 / 25.4
const A5 = { section: 224, sectionHeight: 210, cord: 500 }

/** Every x of an outline made of straight lines, in the order drawn. */
const xsOf = (drawing: Drawing | null, paint: string) =>
  (drawing?.shapes ?? []).flatMap((shape) =>
    shape.kind === 'path' && shape.paint === paint
      ? [...shape.d.matchAll(/[ML](-?[\d.]+) /g)].map((found) => Number(found[1]))
      : [],
  )

describe('the cord of a card', () => {
  test('both long edges measure 114.668 mm, where 96 px are an inch', () => {
    const [bottomLeft = 0, topLeft = 0, topRight = 0, bottomRight = 0] = xsOf(cardDrawings(aCard(), A5).cord, 'pack out')
    expect((topRight - topLeft) / PX_OF_A_MILLIMETRE).toBeCloseTo(114.668, 2)
    expect((bottomRight - bottomLeft) / PX_OF_A_MILLIMETRE).toBeCloseTo(114.668, 2)
    expect((topLeft - bottomLeft) / PX_OF_A_MILLIMETRE).toBeCloseTo(8.5, 2)
  })

  test('at 30° the cut leans by 8.5 / tan 30° = 14.72 mm', () => {
    const flat = aCard({ cut: { angle: 30, length: 60, mandrel: 28, wraps: 6 } })
    const [bottomLeft = 0, topLeft = 0] = xsOf(cardDrawings(flat, A5).cord, 'pack out')
    expect((topLeft - bottomLeft) / PX_OF_A_MILLIMETRE).toBeCloseTo(14.72, 2)
  })

  test('that does not fit is drawn broken within its room, and the heading says so', () => {
    const drawings = cardDrawings(aCard({ cut: { angle: 45, length: 400, mandrel: 120, wraps: 6 } }), A5)
    expect(drawings.cordIsBroken).toBe(true)
    expect(drawings.cord?.width).toBeLessThanOrEqual(A5.cord)
    expect(cordHeading(aCard(), drawings)).toMatch(/^Longer than the room here/)
    expect(cordHeading(aCard(), cardDrawings(aCard(), A5))).toMatch(/full size when printed at 100 %$/)
  })

  test('is not drawn where bore or stem is not known', () => {
    const open = aCard({ cord: null, cut: null, gland: { ...gland, boxBore: null } })
    const drawings = cardDrawings(open, A5)
    expect(drawings.cord).toBeNull()
    expect(drawings.joints).toBeNull()
    expect(drawings.sectionNote).toBe('Not to scale: bore not measured.')
    expect(cordHeading(open, drawings)).toContain('bore or stem is not measured')
  })
})

test('the check rule is as long as it says', () => {
  const [from = 0, to = 0] = xsOf(checkRuler({ length: mm(50), perMillimetre: PX_PER_MILLIMETRE }), 'out')
  expect((to - from) / PX_OF_A_MILLIMETRE).toBeCloseTo(50, 3)
})

describe('joints from above', () => {
  const drawn = (count: number) =>
    jointsDrawing({
      boxBore: mm(45),
      stemDiameter: mm(28),
      positions: Array.from({ length: count }, (_, ring) => degrees((ring * 90) % 360)),
      size: 92,
    })

  test('rings whose joints lie over each other are named together', () => {
    const said = drawn(6).shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.says] : []))
    expect(said).toEqual(['1, 5', '2, 6', '3', '4'])
  })

  test.each([1, 4, 6, 15])('the numbers of %i rings stay beside the ring and on the drawing', (count) => {
    const { shapes, width } = drawn(count)
    for (const shape of shapes) {
      if (shape.kind !== 'text') continue
      const wide = shape.says.length * 8
      const from = shape.x - { start: 0, middle: wide / 2, end: wide }[shape.anchor]
      expect(from).toBeGreaterThanOrEqual(0)
      expect(from + wide).toBeLessThanOrEqual(width)
      if (shape.anchor === 'start') expect(shape.x).toBeGreaterThan(width / 2 + 46)
    }
  })
})

describe('the words of a card', () => {
  test('what goes through the valve, what is read at arm’s length, which spanner', () => {
    const card = aCard()
    expect(serviceInWords(card)).toBe('condensate, 118\u00a0°C, 3\u00a0bar · graphite braid')
    expect(mainFigures(card).map(({ figure }) => figure)).toEqual(['5', '114.7', '6', '12.0'])
    expect(mainFigures(card)[3]?.range).toBe('11.4 to 12.6 is right')
    expect(remarksOf(card)).toEqual(['Outside that, stop and ask. High. Low.', 'Cord: no listed cord fits.'])
    expect(jointsInWords(card)[1]).toBe('1 at 12, 2 at 3, 3 at 6, 4 at 9, 5 at 12.')
    expect(spannersInWords(card)).toBe('18 mm (present size) or 19 mm (nuts made before 1982)')
    expect(studsInWords(card)).toBe('2 studs, M12')
  })

  test('pressed rings have neither length nor wraps', () => {
    const pressed = aCard({ form: 'die-formed', cut: null, cord: { ...aCard().cord, says: 'pressed for a stem of 28.0 mm' } })
    expect(mainFigures(pressed).map(({ says }) => says)).toEqual(['rings of 8.5\u00a0mm', 'mm gap when loaded'])
    expect(remarksOf(pressed).at(-1)).toBe('Rings: pressed for a stem of 28.0 mm.')
  })

  test('what is not known has no figure, and says what to do', () => {
    const open = aCard({
      cord: null,
      cut: null,
      rings: null,
      gap: null,
      joints: [],
      jointNotes: [],
      temperature: null,
      pressure: null,
      family: null,
      gland: { ...gland, studThread: null, studCount: null },
    })
    expect(mainFigures(open).map(({ figure }) => figure)).toEqual([null, null, null, null])
    expect(remarksOf(open)).toEqual(['Cord: measure bore and stem first.'])
    expect(serviceInWords(open)).toBe('condensate, temperature not recorded, pressure not recorded · packing not recorded')
    expect(studsInWords(open)).toBe('studs not counted, thread not recorded')
  })
})
