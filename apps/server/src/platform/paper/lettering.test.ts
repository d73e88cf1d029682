import { describe, expect, it } from 'vitest'
import { printedPages } from '../../../testing/printed.ts'
import { pdfOf } from './pdf.ts'
import { figure } from './pieces.ts'
import { brokenInto, firstLines, tagLettering, widthAtMost } from './lettering.ts'

/** Every letter, digit and sign of Latin, Greek and Cyrillic, and some of the widest beyond. */
const letters = Array.from({ length: 0x52f - 0x20 }, (_, index) => String.fromCodePoint(0x21 + index))
  .filter((letter) => /[^\p{C}\p{M}\p{Z}]/u.test(letter))
  .concat('ᙱ', 'ᚅ', 'Ⅷ', '…', '—', 'Ꙭ', '弁')

it('no letter of the face, bold or not, is wider than it is taken for', async () => {
  const content = [true, false].flatMap((bold) => letters.map((letter) => ({ ...figure(`${letter}${letter}`, 10), bold })))
  const pieces = (await printedPages(await pdfOf({ size: 'A4', title: 'trial', content }))).flatMap((page) => page.pieces)
  expect(pieces.length).toBeGreaterThan(1.9 * letters.length)
  const wider = pieces.filter(({ says, width }) => width > 10 * widthAtMost(says) + 0.01)
  expect(wider.map(({ says, width }) => [says, width / 20])).toEqual([])
})

describe('lines', () => {
  it('break behind a blank or a sign, and within a word only where it is too long', () => {
    expect(brokenInto('BM-3307/A', 4.4)).toEqual(['BM-', '3307/A'])
    expect(brokenInto('main steam stop', 6)).toEqual(['main', 'steam', 'stop'])
    expect(brokenInto('WWWWW', 2.5)).toEqual(['WW', 'WW', 'W'])
    expect(brokenInto('  ', 4)).toEqual([])
  })

  it('are cut with a sign that more was there', () => {
    expect(firstLines('main steam stop', 6, 3)).toEqual(['main', 'steam', 'stop'])
    expect(firstLines('main steam stop', 6, 2)).toEqual(['main', 'steam…'])
    expect(firstLines('main steam stop', 6, 0)).toEqual([])
  })

  it('lose no letter and are no wider than asked', () => {
    for (const width of [1.9, 3, 8, 20]) {
      const lines = brokenInto('BH 33.07/A-2_left+right SECOND GROUP 14', width)
      expect(lines.join('').replaceAll(' ', '')).toBe('BH33.07/A-2_left+rightSECONDGROUP14')
      for (const line of lines) expect(widthAtMost(line)).toBeLessThanOrEqual(width)
    }
  })
})

it('a tag is as large as the label takes, in one line while that is large print', () => {
  const room = { width: 88, height: 44, largest: 22 }
  expect(tagLettering('V1', room)).toEqual({ size: 22, lines: ['V1'] })
  expect(tagLettering('BM-3307', room)).toMatchObject({ lines: ['BM-3307'] })
  const long = tagLettering('W'.repeat(40), room)
  expect(long.lines.join('')).toBe('W'.repeat(40))
  expect(long.size).toBeLessThan(11)
  expect(long.size * long.lines.length * 1.23).toBeLessThanOrEqual(44)
})
