import { expect, test } from 'vitest'
import { gaugeGeometry, gaugeInWords, leastGap } from './gauge-geometry.ts'

const gland = { gapLeft: 7.4, gapRight: 6.6, gapIsInferred: false, keepClear: 3, noseLength: 16 }

test('the block stands three pixels from the box face for each millimetre of the lesser gap', () => {
  expect(gaugeGeometry(gland).blockX).toBeCloseTo(54 + 3 * 6.6)
})

test('the packing begins where the nose ends', () => {
  expect(gaugeGeometry(gland).packingTopX).toBeCloseTo(54 - 3 * (16 - 6.6))
})

test('a gap measured on one side only stands for the valve', () => {
  expect(leastGap({ gapLeft: null, gapRight: 5 })).toBe(5)
})

test('no block is placed where no gap is known', () => {
  const geometry = gaugeGeometry({ ...gland, gapLeft: null, gapRight: null })
  expect(geometry).toMatchObject({ blockX: null, packingTopX: null, isBroken: false })
})

test('a closed gap is a gap of zero, not an unknown one', () => {
  expect(gaugeGeometry({ ...gland, gapRight: 0 }).blockX).toBe(54)
})

test('no packing is drawn where the nose length is not known', () => {
  expect(gaugeGeometry({ ...gland, noseLength: null }).packingTopX).toBeNull()
})

test('a gap past 18 mm stands at 18 with a break mark, and at 18 without one', () => {
  expect(gaugeGeometry({ ...gland, gapLeft: 30, gapRight: 26 })).toMatchObject({ blockX: 108, isBroken: true })
  expect(gaugeGeometry({ ...gland, gapLeft: 18, gapRight: 18 })).toMatchObject({ blockX: 108, isBroken: false })
})

test('a long nose does not reach past the end of the drawing', () => {
  expect(gaugeGeometry({ ...gland, noseLength: 60 }).packingTopX).toBe(4)
})

test('the words give both gaps and say how they are known', () => {
  expect(gaugeInWords(gland)).toBe('Gap left 7.4 mm, right 6.6 mm, measured, keep clear 3.0 mm')
  expect(gaugeInWords({ ...gland, gapRight: null, gapIsInferred: true })).toBe(
    'Gap left 7.4 mm, worked out from turns, keep clear 3.0 mm',
  )
  expect(gaugeInWords({ ...gland, gapLeft: null, gapRight: null })).toBe('Gap not known, keep clear 3.0 mm')
})
