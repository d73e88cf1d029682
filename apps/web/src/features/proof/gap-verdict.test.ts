import { Gland } from '@glandkeeper/contract/glands'
import { CardGap } from '@glandkeeper/contract/cut-cards'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { expect, test } from 'vitest'
import { gapVerdict } from './gap-verdict.ts'

/** Nose 20, least engagement 3, keep clear 3; the card expects 8 mm and allows 1.5 mm either way. */
const gland = Gland.parse(aValve().gland)
const gap = CardGap.parse({ expected: 8, least: 6.5, most: 9.5, below: '', above: '' })
const set = { gland, gap, section: 8.5, ringsMore: 0 }
const verdictOf = (gapLeft: number | null, gapRight: number | null, on: Partial<typeof set> | { gap: null } = {}) => {
  const found = gapVerdict({ ...set, ...on }, { gapLeft, gapRight })
  return found && { ...found, says: found.says.replaceAll('\u00a0', ' ') }
}

test('a gap as expected is good, with what is left to take up', () => {
  expect(verdictOf(8, 8.2)).toEqual({
    verdict: 'good',
    says: 'Gap 8.1 mm, expected 8.0 mm (6.5 to 9.5 is right): 5.0 mm of travel.',
    nextStep: 'Go on.',
  })
})

test('a short gap asks for one more ring where the nose still enters over it, 20 - 4 - 8.5 = 7.5 mm', () => {
  const found = verdictOf(4, 4)
  expect(found?.verdict).toBe('one more ring')
  expect(found?.says).toContain('the nose would still enter by 7.5 mm')
  expect(found?.nextStep).toContain('still isolated')
})

test('a short gap without room for another ring is a reason to stop', () => {
  expect(verdictOf(6, 6, { section: 12 })?.verdict).toBe('no room for another ring')
})

test('a follower that stands on the box presses nothing, and asks for a ring', () => {
  expect(verdictOf(0, 0)?.verdict).toBe('one more ring')
})

test('a gap the engine lets pass but that eats into what is kept clear is short', () => {
  expect(verdictOf(3, 3, { gap: CardGap.parse({ expected: 4, least: 4, most: 6, below: '', above: '' }) })?.verdict).toBe(
    'one more ring',
  )
})

test('a wide gap means a ring too many, unless a ring was added to what the card counts and the nose is still guided', () => {
  expect(verdictOf(12, 12)?.verdict).toBe('one ring too many')
  expect(verdictOf(12, 12)?.says).toContain('The nose is in by 8.0 mm')
  expect(verdictOf(12, 12, { ringsMore: 1 })?.verdict).toBe('good')
  expect(verdictOf(18, 18, { ringsMore: 1 })?.verdict).toBe('one ring too many')
})

test('a follower that tilts is levelled before its gap is judged', () => {
  expect(verdictOf(4, 5)).toMatchObject({ verdict: 'tilted', says: expect.stringContaining('the right side is high') as string })
})

test('where nothing is expected the travel is said, and none is a reason to stop', () => {
  expect(verdictOf(8, 8, { gap: null })).toMatchObject({
    verdict: 'not known',
    says: expect.stringContaining('5.0 mm of travel') as string,
  })
  expect(verdictOf(2, 2, { gap: null })?.nextStep).toContain('Stop')
})

test('nothing is said until a gap is read, nor of what is no figure', () => {
  expect(verdictOf(null, null)).toBeNull()
  expect(verdictOf(Number.NaN, null)).toBeNull()
  expect(verdictOf(8, null)?.verdict).toBe('good')
})
