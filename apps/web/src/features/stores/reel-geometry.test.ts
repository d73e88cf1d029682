import type { ReelToCut } from './queries.ts'
import { expect, test } from 'vitest'
import { metreMarks, reelBar, reelScale } from './reel-geometry.ts'

const piece = (tag: string, length: number, count = 1) => ({ tag, length, count, says: '' })
const reelOf = (reel: object) =>
  ({ length: 8000, pieces: [piece('BM-3307', 688), piece('BM-3304', 500, 2)], left: 6302, isScrap: false, ...reel }) as ReelToCut

test('pieces lie in the order they are cut, to scale, each by itself, and the end is what is left', () => {
  const { width, parts } = reelBar(reelOf({}), 0.1)
  expect(width).toBe(800)
  expect(parts.map(({ x, width: wide, piece: cut }) => [x, wide, cut?.tag ?? 'end'])).toEqual([
    [0, 68.8, 'BM-3307'],
    [68.8, 50, 'BM-3304'],
    [118.8, 50, 'BM-3304'],
    // Trims of 10 mm stand between the last piece and the end.
    [169.8, 630.2, 'end'],
  ])
})

test('nothing is drawn past the reel, and a reel that is used up has no end', () => {
  const { parts, width } = reelBar(reelOf({ length: 1688, left: 0 }), 0.1)
  expect(parts.every(({ piece: cut }) => cut !== null)).toBe(true)
  const last = parts.at(-1)
  expect((last?.x ?? 0) + (last?.width ?? 0)).toBe(width)
})

test('a piece is lettered with as much as it has room for', () => {
  const letteringAt = (pxPerMm: number) => reelBar(reelOf({ pieces: [piece('BM-3307', 688)] }), pxPerMm).parts[0]?.lettering
  expect(letteringAt(0.2)).toBe('BM-3307 688')
  expect(letteringAt(0.1)).toBe('BM-3307')
  expect(letteringAt(0.02)).toBe('')
})

test('one scale for all reels of a kit, and a ruler with room between its marks', () => {
  expect(reelScale([{ length: 8000 }, { length: 2000 }] as ReelToCut[], 400)).toBe(0.05)
  expect(reelScale([], 400)).toBe(0)
  expect(metreMarks(8000, 0.05)).toEqual(
    [0, 1, 2, 3, 4, 5, 6, 7, 8].map((metre) => ({ x: metre * 50, label: metre === 0 ? '0 m' : String(metre) })),
  )
  expect(metreMarks(700, 0.5).map(({ label }) => label)).toEqual(['0 m', '0.1', '0.2', '0.3', '0.4', '0.5', '0.6', '0.7'])
  expect(metreMarks(0, 0.5)).toEqual([])
})
