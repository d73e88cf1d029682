import { expect, it } from 'vitest'
import { printedPages } from '../../../testing/printed.ts'
import { pdfOf } from '../../platform/paper/pdf.ts'
import { newPage, write } from './ink.ts'
import { linesOf, uprightAtMost } from './lines-of.ts'

it('no letter of the upright face is wider than it is taken for', async () => {
  const letters = Array.from({ length: 0x52f - 0x20 }, (_, index) => String.fromCodePoint(0x21 + index)).filter((letter) =>
    /[^\p{C}\p{M}\p{Z}]/u.test(letter),
  )
  const page = newPage()
  for (const letter of [...letters, '…']) write(page, letter + letter, [20, 20], { size: 10 })
  const printed = await printedPages(await pdfOf({ size: 'A4', title: 'trial', content: page.letters }))
  const pieces = printed.flatMap(({ pieces: all }) => all)
  expect(pieces.length).toBeGreaterThan(0.9 * letters.length)
  const wider = pieces.filter(({ says, width }) => width > 10 * uprightAtMost(says) + 0.01)
  expect(wider.map(({ says, width }) => [says, width / 20])).toEqual([])
})

it('lines break at blanks, and a figure is never torn at its point', () => {
  expect(linesOf('Gap 17.5 mm left, 17.4 mm right.', 7, 9)).toEqual(['Gap 17.5 mm', 'left, 17.4 mm', 'right.'])
})

it('a word longer than a line is broken, and none of its letters is lost', () => {
  const lines = linesOf(`to ${'W'.repeat(12)} now`, 5, 9)
  expect(lines.join('').replaceAll(' ', '')).toBe(`to${'W'.repeat(12)}now`)
  for (const line of lines) expect(uprightAtMost(line)).toBeLessThanOrEqual(5)
})

it('what does not fit is cut with a sign, within the width', () => {
  expect(linesOf('main steam stop', 4, 2)).toEqual(['main', 'steam…'])
  expect(linesOf('main steam stop', 4, 0)).toEqual([])
  expect(linesOf('', 4, 2)).toEqual([])
  for (const width of [1, 3, 8])
    for (const line of linesOf('Mechanical drying section, second group', width, 2))
      expect(uprightAtMost(line)).toBeLessThanOrEqual(width)
})
