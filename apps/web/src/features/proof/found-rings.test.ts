import type { FoundRing } from '@glandkeeper/contract/events'
import { expect, test } from 'vitest'
import { allAlike, foundInShort, withCause, withCondition, without } from './found-rings.ts'

const hard: FoundRing = { condition: 'hard', cause: 'heat' }

test('a tap says the next ring, or the one that was chosen and keeps its cause', () => {
  expect(withCondition([hard], null, 'torn')).toEqual([hard, { condition: 'torn' }])
  expect(withCondition([hard, { condition: 'torn' }], 0, 'burnt')).toEqual([
    { condition: 'burnt', cause: 'heat' },
    { condition: 'torn' },
  ])
})

test('one tap more says that all the others are like the last one', () => {
  expect(allAlike([{ condition: 'torn' }, hard], 4)).toEqual([{ condition: 'torn' }, hard, hard, hard])
  expect(allAlike([hard, hard], 1)).toEqual([hard, hard])
  expect(allAlike([], 4)).toEqual([])
})

test('a cause is of one ring and can be taken away; a ring that was not there goes', () => {
  const found: FoundRing[] = [{ condition: 'torn' }, { condition: 'missing' }]
  expect(withCause(found, 0, 'rough stem')).toEqual([{ condition: 'torn', cause: 'rough stem' }, { condition: 'missing' }])
  expect(withCause([hard], 0, null)).toEqual([{ condition: 'hard' }])
  expect(without(found, 0)).toEqual([{ condition: 'missing' }])
  expect(foundInShort([])).toBe('not said')
  expect(foundInShort(found)).toBe('2 said')
})

test('no more than forty are taken', () => {
  expect(
    withCondition(
      Array.from({ length: 40 }, () => hard),
      null,
      'torn',
    ),
  ).toHaveLength(40)
})
