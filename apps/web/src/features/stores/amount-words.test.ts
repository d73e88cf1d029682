import { expect, test } from 'vitest'
import { formatAmount, formatMetres, lotsWord, lotWord, whatItIs } from './amount-words.ts'

const plain = (words: string) => words.replaceAll('\u00a0', ' ')

test('cord is told in metres to the centimetre, all else in pieces, and one of them is one', () => {
  expect(plain(formatAmount(16.404, 'm'))).toBe('16.4 m')
  expect(plain(formatAmount(-0.1 - 0.2, 'm'))).toBe('−0.3 m')
  expect(plain(formatAmount(1, 'pc'))).toBe('1 piece')
  expect(plain(formatAmount(1200, 'pc'))).toBe('1,200 pieces')
  expect(plain(formatMetres(5525))).toBe('5.53 m')
})

const none = { family: null, section: null, boxBore: null, stemDiameter: null, thread: null, length: null }
const mm = (value: number) => value as never

test('an item says what it is from its figures, and nothing it has not', () => {
  expect(plain(whatItIs({ ...none, kind: 'cord', family: 'graphite braid', section: mm(8) }))).toBe(
    'cord, graphite braid, 8 mm square',
  )
  expect(plain(whatItIs({ ...none, kind: 'stud', thread: 'M12', length: mm(85.5) }))).toBe('stud, M12, 85.5 mm long')
  expect(plain(whatItIs({ ...none, kind: 'spacer', boxBore: mm(45), stemDiameter: mm(28), length: mm(20) }))).toBe(
    'spacer, bore 45 mm, stem 28 mm, 20 mm long',
  )
})

test('cord comes on reels, the rest in boxes', () => {
  expect([lotWord('cord'), lotsWord('cord'), lotWord('stud'), lotsWord('nut')]).toEqual(['reel', 'reels', 'box', 'boxes'])
})
