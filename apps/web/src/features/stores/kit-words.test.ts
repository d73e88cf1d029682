import type { KitLine } from '@glandkeeper/contract/kits'
import { expect, test } from 'vitest'
import { endInWords, lineStands, reelInWords, wasteInWords } from './kit-words.ts'
import type { ReelToCut } from './queries.ts'

const plain = (words: string | null) => words?.replaceAll('\u00a0', ' ') ?? null
const reel = {
  lotId: '01890000-0000-7000-8000-0000000000aa',
  label: 'R-12',
  batch: 'B-7',
  length: 8000,
  pieces: [
    { tag: 'BM-1', length: 688, count: 1, says: '' },
    { tag: 'BM-2', length: 500, count: 2, says: '' },
  ],
  left: 120,
  isScrap: true,
} as unknown as ReelToCut

const waste = (wasted: number, bound: number, share = 0.042) =>
  plain(wasteInWords({ waste: { wasted, bound, share }, reels: [reel] } as unknown as KitLine))

test('waste is told beside the least that there can be', () => {
  expect(waste(420, 390)).toBe('0.42 m wasted, 4.2 %. No cutting wastes less than 0.39 m.')
  expect(waste(420, 419.8)).toBe('0.42 m wasted, 4.2 %. No cutting wastes less.')
  expect(waste(420, 0)).toBe('0.42 m wasted, 4.2 %. Whether another wastes less is not known.')
  expect(waste(0.4, 0)).toBe('Nothing is wasted.')
  expect(wasteInWords({ waste: null, reels: [reel] })).toBeNull()
  expect(wasteInWords({ waste: { wasted: 1, bound: 0, share: 0.1 }, reels: [] } as unknown as KitLine)).toBeNull()
})

test('a line is issued or in the store; what is short of it is told by itself', () => {
  expect(lineStands({ short: [] }, 0)).toBe('issued')
  expect(lineStands({ short: [] }, 0.3)).toBe('in the store')
  expect(lineStands({ short: ['4 pieces short'] }, 0.3)).toBeNull()
})

test('the end of a reel is scrap, goes back, or is none', () => {
  expect(plain(endInWords(reel))).toBe('0.12 m left: scrap')
  expect(plain(endInWords({ ...reel, isScrap: false }))).toBe('0.12 m left: goes back')
  expect(endInWords({ ...reel, left: 0 as never })).toBe('used up')
})

test('a drawn reel is told to those who cannot see it', () => {
  expect(plain(reelInWords(reel))).toBe('R-12, 8 m: 3 pieces for BM-1, BM-2; 0.12 m left: scrap')
  const many = { ...reel, pieces: [1, 2, 3, 4, 5, 6].map((count) => ({ ...reel.pieces[0], tag: `BM-${count}` })) }
  expect(plain(reelInWords(many as ReelToCut))).toContain('6 pieces for BM-1, BM-2, BM-3, BM-4 and 2 more')
})
