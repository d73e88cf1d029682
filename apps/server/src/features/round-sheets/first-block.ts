import { paperColours } from '../../platform/paper/colours.ts'
import { LINE } from '../../platform/paper/lettering.ts'
import { carryInWords } from './carry-in-words.ts'
import { inside, type Page, paper, rule, write, writeLines } from './ink.ts'
import type { RoundSheet } from './known.ts'
import { linesOf } from './lines-of.ts'

const SIZE = 7
const NAME_WIDTH = 58
const BAR = 3.5
/** Tags may not crowd the stops off the page: each is in its row again. */
const MOST_LINES = 3
const { accent } = paperColours

/** Above the first stop: what to carry, and what stands before any work. Tells where the stops begin. */
export function firstBlock(page: Page, { toCarry, cautions }: Pick<RoundSheet, 'toCarry' | 'cautions'>, top: number): number {
  write(page, 'To carry', [paper.edge, top + 4], { size: 9.5, bold: true })
  let y = top + 18
  for (const { name, says, isWhole } of carryInWords(toCarry)) {
    write(page, name, [paper.edge, y], { size: SIZE, bold: true })
    const lines = linesOf(says, (inside - NAME_WIDTH) / SIZE, isWhole ? Infinity : MOST_LINES)
    y = writeLines(page, lines, [paper.edge + NAME_WIDTH, y], { size: SIZE })
  }
  const end = cautionColumns(page, cautions, y + 5)
  rule(page, [paper.edge, end], [paper.width - paper.edge, end], 0.8)
  return end
}

/** The cautions of the cut card, beside a red bar: read them before a hand moves. */
function cautionColumns(page: Page, cautions: RoundSheet['cautions'], y: number): number {
  const gutter = 12
  const width = (inside - BAR - 8 - gutter) / 2
  const left = paper.edge + BAR + 6
  write(page, 'Before a nut is touched', [left, y], { size: 8, bold: true, color: accent })
  const half = Math.ceil(cautions.length / 2)
  const ends = [cautions.slice(0, half), cautions.slice(half)].map((said, column) => {
    const lines = said.flatMap((line) => linesOf(`· ${line}`, width / 6.2, 2))
    return writeLines(page, lines, [left + column * (width + gutter), y + 8 * LINE], { size: 6.2 })
  })
  const end = Math.max(...ends)
  page.lines.push({ type: 'rect', x: paper.edge, y, w: BAR, h: end - y, color: accent, lineWidth: 0 })
  return end + 5
}
