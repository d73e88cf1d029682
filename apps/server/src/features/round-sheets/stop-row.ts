import { LeakGrade, StemFeel } from '@glandkeeper/contract/events'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'
import { paperColours } from '../../platform/paper/colours.ts'
import { firstLines, LINE, tagLettering } from '../../platform/paper/lettering.ts'
import { inside, type Page, paper, rule, tickBox, write, writeInBox, writeLines } from './ink.ts'
import type { SheetStop } from './known.ts'
import { linesOf } from './lines-of.ts'
import { gaugeAt, standingAt } from './stop-gauge.ts'

/** Points: a little over 21 mm, twelve to a page. */
export const ROW = 62

/** Left edge and width of each part of a row, in points. */
const columns = {
  number: { x: paper.edge, width: 20 },
  what: { x: paper.edge + 22, width: 150 },
  stands: { x: paper.edge + 178, width: 84 },
  byHand: { x: paper.edge + 270, width: inside - 270 },
} as const

const SMALL = 6.5
const { soft, accent } = paperColours

/** One stop: what is known on the left, room for what will be known on the right. `y` is its upper edge. */
export function stopRow(page: Page, stop: SheetStop, y: number): void {
  write(page, String(stop.position), [columns.number.x, y + 4], { size: 11, bold: true })
  whatItIs(page, stop, y + 2)
  howItStands(page, stop, y + 4)
  byHand(page, y + 4)
  rule(page, [paper.edge, y + ROW], [paper.width - paper.edge, y + ROW])
}

function whatItIs(page: Page, stop: SheetStop, y: number): void {
  const { x, width } = columns.what
  const tag = tagLettering(stop.tag, { width, height: 20, largest: 16 })
  const under = writeLines(page, tag.lines, [x, y], { size: tag.size, bold: true })
  const most = Math.floor((y + ROW - 3 - under) / (SMALL * LINE))
  const place = [
    `${stop.areaName}, level ${String(stop.level).replace('-', '−')}`,
    stop.minutes === null ? '' : `${Math.round(stop.minutes)} min`,
    stop.addedBy === null ? '' : `put on by ${stop.addedBy}`,
  ]
  const lines = (text: string, count: number) => linesOf(text, width / SMALL, count)
  const description = lines(stop.description, most > 4 ? 2 : 1)
  const where = lines(place.filter(Boolean).join(' · '), stop.addedBy === null ? 1 : 2)
  const last = lines(stop.lastEntry ?? 'nothing entered yet', most - description.length - where.length)
  const next = writeLines(page, description, [x, under], { size: SMALL })
  writeLines(page, [...where, ...last], [x, next], { size: SMALL, color: soft })
}

/** The gap as it stands, what is left, what is to be expected, and the spanner. */
function howItStands(page: Page, stop: SheetStop, y: number): void {
  const { x, width } = columns.stands
  page.lines.push(...gaugeAt([x, y], stop), ...standingAt([x, y + 31.5], stop.standing))
  const isRed = stop.standing === 'book' || stop.standing === 'spent'
  const left = stop.reserve === null ? '' : `, ${millimetres(stop.reserve)} left`
  const small = { size: SMALL }
  write(page, gapsInWords(stop), [x, y + 22], small)
  write(page, `${stop.standing}${left}`, [x + 11, y + 31], { ...small, bold: isRed, ...(isRed && { color: accent }) })
  const expects = stop.expectedGap === null ? 'nothing to expect yet' : `expect gap ${millimetres(stop.expectedGap)}`
  write(page, expects, [x, y + 40], small)
  const spanner = stop.card.spanners.map(({ marking }) => marking).join(' or ')
  writeLines(page, firstLines(spanner === '' ? 'spanner not known' : spanner, width / SMALL, 1), [x, y + 49], {
    ...small,
    bold: true,
  })
}

function gapsInWords({ gapLeft, gapRight, gapIsInferred }: SheetStop): string {
  const sides = [gapLeft === null ? '' : `L ${gapLeft.toFixed(1)}`, gapRight === null ? '' : `R ${gapRight.toFixed(1)}`]
  const said = sides.filter(Boolean).join('  ')
  if (said === '') return 'gap not known'
  return gapIsInferred ? `${said} mm by turns` : `${said} mm`
}

const BOX = [48, 22] as const
const words = (choices: readonly string[]) => choices.filter((word) => word !== 'not tried').join('\u2002\u2002')
const leaks = words(LeakGrade.options)
const feels = words(StemFeel.options)

/** Boxes for a pencil, words to ring, lines to write on. */
function byHand(page: Page, y: number): void {
  const { x, width } = columns.byHand
  const end = x + width
  for (const [index, name] of ['gap left, mm', 'gap right, mm'].entries()) writeInBox(page, name, [x + index * 51, y], BOX)
  tickBox(page, [x + 112, y + 1], 11)
  write(page, 'half turn', [x + 104, y + 14], { size: 6 })
  for (const [index, name] of ['turns left', 'turns right'].entries()) writeInBox(page, name, [x + 134 + index * 51, y], BOX)
  writeInBox(page, 'time', [x + 236, y], [end - x - 236, BOX[1]])
  toRing(page, ['leak before', leaks], [x, y + 25])
  toRing(page, ['leak after', leaks], [x, y + 36])
  toRing(page, ['stem', feels], [x + 152, y + 25], 19)
  tickBox(page, [x + 152, y + 36], 8)
  write(page, 'not done, why', [x + 163, y + 36], { size: SMALL })
  rule(page, [x + 210, y + 45], [end, y + 45])
  write(page, 'note', [x, y + 47.5], { size: SMALL, color: soft })
  rule(page, [x + 18, y + 55], [end, y + 55])
}

function toRing(page: Page, [name, choices]: readonly [string, string], [x, y]: readonly [number, number], indent = 39): void {
  write(page, name, [x, y + 0.5], { size: SMALL, color: soft })
  write(page, choices, [x + indent, y], { size: 7 })
}
