import { aValve, type ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Drawing } from './drawing.ts'
import { drawnGland } from './section-model.ts'
import { sectionDrawing } from './section.ts'
import { sectionOfCard } from './section-of-card.ts'

const gland = (overrides: ValveOverrides['gland'] = {}) => aValve({ gland: overrides }).gland
const gaps = (gap: number | null, gapIsInferred = false) => ({ gapLeft: gap, gapRight: gap, gapIsInferred })
const texts = ({ shapes }: Drawing) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []))
const paths = ({ shapes }: Drawing) => shapes.flatMap((shape) => (shape.kind === 'path' ? [shape] : []))

describe('the section of a valve', () => {
  const drawing = sectionDrawing(drawnGland(gland(), gaps(7), 5), 'M12', 584)

  test('shows every figure and numbers its rings', () => {
    const said = texts(drawing).map(({ says }) => says)
    for (const figure of ['stem ⌀ 28', 'bore ⌀ 45', 'depth 48', '7.0', '8.5', 'M12', '5 rings', '35.0 high', '1', '5'])
      expect(said).toContain(figure)
    expect(drawing.says).toContain('bore 45 mm, stem 28 mm, depth 48 mm')
  })

  test('hatches what is cut through and not the stem, studs and nuts', () => {
    const paints = paths(drawing).map(({ paint }) => paint)
    expect(paints.filter((paint) => paint === 'pack out')).toHaveLength(10)
    expect(paints.filter((paint) => paint === 'paperfill out')).toHaveLength(2)
    expect(paints.filter((paint) => paint === 'plain out')).toHaveLength(2)
  })

  test('is solid where it was measured, dashed where the gap is worked out', () => {
    const followers = (drawn: Drawing) => paths(drawn).filter(({ paint }) => paint === 'steel2 out')
    expect(followers(drawing).some(({ isDashed }) => isDashed)).toBe(false)
    const inferred = sectionDrawing(drawnGland(gland(), gaps(7, true), 5), 'M12', 584)
    expect(followers(inferred).every(({ isDashed }) => isDashed)).toBe(true)
    expect(texts(inferred).find(({ says }) => says === '7.0')?.isDashed).toBe(true)
  })

  test('has smaller lettering on a phone', () => {
    const phone = sectionDrawing(drawnGland(gland(), gaps(7), 5), 'M12', 358)
    const size = (drawn: Drawing) => texts(drawn).find(({ says }) => says === 'depth 48')?.size
    expect([size(drawing), size(phone)]).toEqual([15, 14])
  })
})

describe('the section of a card', () => {
  const size = { width: 224, mostHeight: 210 }
  const drawing = sectionOfCard(drawnGland(gland(), gaps(8.975, true), 6), size)

  test('shows bore, stem, depth and the gap to expect', () => {
    expect(texts(drawing).map(({ says }) => says)).toEqual(['9.0', '48', '⌀ 28', '⌀ 45'])
    expect(drawing.says).toBe('Section of the stuffing box: gap when loaded 9.0 mm, bore 45 mm, stem 28 mm, depth 48 mm')
  })

  test('draws the follower dashed, since it is expected there', () => {
    const followers = paths(drawing).filter(({ paint }) => paint === 'steel2 out')
    expect(followers.map(({ isDashed }) => isDashed)).toEqual([true, true])
  })

  test('has a line to write on for each figure nobody knows', () => {
    const unknown = drawnGland(gland({ boxBore: null, stemDiameter: null, boxDepth: null }), gaps(null), null)
    const open = sectionOfCard(unknown, size)
    expect(texts(open)).toEqual([])
    expect(open.says).toContain('bore not measured, stem not measured, depth not measured')
  })

  test('keeps its figures on its ground, whatever the gland', () => {
    const dimension = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    fc.assert(
      fc.property(dimension(6, 120), dimension(2, 30), dimension(15, 300), dimension(0, 80), (stem, section, depth, gap) => {
        const wide = gland({ stemDiameter: stem, boxBore: stem + 2 * section, boxDepth: depth, noseLength: depth * 0.4 })
        const drawn = sectionOfCard(drawnGland(wide, gaps(gap, true), 5), size)
        for (const { x, y } of texts(drawn)) {
          expect(x).toBeGreaterThan(0)
          expect(x).toBeLessThan(drawn.width - 30)
          expect(y).toBeGreaterThan(10)
          expect(y).toBeLessThanOrEqual(drawn.height)
        }
      }),
    )
  })
})
