import type { ValveCard } from '@glandkeeper/contract/pocket'
import { expect, test } from 'vitest'
import { findByTag, nearInTheWalk } from './near.ts'

const card = (tag: string, walkPosition: number, areaCode = 'BM') =>
  ({ valve: { tag, walkPosition, areaCode } }) as Pick<ValveCard, 'valve'>
const cards = [card('BM-3301', 10), card('BM-3307', 30), card('BM-3302', 20), card('TF-330', 15, 'TF'), card('XBM-330', 40)]
const tags = (found: readonly Pick<ValveCard, 'valve'>[]) => found.map(({ valve }) => valve.tag)

test('a part of a tag finds it, however it is written; what begins so comes first', () => {
  expect(tags(findByTag(cards, 'bm 330'))).toEqual(['BM-3301', 'BM-3302', 'BM-3307', 'XBM-330'])
  expect(tags(findByTag(cards, '3307'))).toEqual(['BM-3307'])
  expect(findByTag(cards, ' - ')).toEqual([])
})

test('near is what comes before and after in the walk through the area', () => {
  expect(tags(nearInTheWalk(cards, 'BM-3302'))).toEqual(['BM-3301', 'BM-3307', 'XBM-330'])
  expect(nearInTheWalk(cards, 'nothing')).toEqual([])
})
