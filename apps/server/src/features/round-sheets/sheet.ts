import { format } from 'date-fns/format'
import { getISOWeek } from 'date-fns/getISOWeek'
import { parseISO } from 'date-fns/parseISO'
import type { Content } from 'pdfmake/interfaces.js'
import { paperColours } from '../../platform/paper/colours.ts'
import { pdfOf } from '../../platform/paper/pdf.ts'
import { firstLines } from '../../platform/paper/lettering.ts'
import { firstBlock } from './first-block.ts'
import { inside, newPage, type Page, paper, rule, write, writeLines } from './ink.ts'
import type { RoundSheet } from './known.ts'
import { linesOf } from './lines-of.ts'
import { ROW, stopRow } from './stop-row.ts'

const HEAD = 38
const FOOT = 10
const TOP = paper.edge + HEAD
const BOTTOM = paper.height - paper.edge - FOOT

/** Every stop in a row of its own, none torn over two sheets; each sheet says which of how many it is. */
export function printedSheet(sheet: RoundSheet): Promise<Uint8Array<ArrayBuffer>> {
  const pages = pagesOf(sheet)
  for (const [index, page] of pages.entries()) {
    head(page, sheet, `page ${index + 1} of ${pages.length}`)
    foot(page)
  }
  const content = pages.flatMap((page, index): Content[] => [
    ...(index > 0 ? [{ text: '', pageBreak: 'before' as const }] : []),
    { canvas: page.lines, absolutePosition: { x: 0, y: 0 } },
    ...page.letters,
  ])
  return pdfOf({ size: 'A4', title: `Round ${sheet.name}`, content })
}

function pagesOf(sheet: RoundSheet): Page[] {
  const first = newPage()
  const pages = [first]
  let page = first
  let y = firstBlock(first, sheet, TOP)
  for (const stop of sheet.stops) {
    if (y + ROW > BOTTOM) {
      page = newPage()
      pages.push(page)
      y = TOP
    }
    stopRow(page, stop, y)
    y += ROW
  }
  return pages
}

function head(page: Page, sheet: RoundSheet, which: string): void {
  const y = paper.edge
  const right = paper.width - paper.edge - 190
  writeLines(page, firstLines(sheet.name, (inside - 196) / 13, 1), [paper.edge, y], { size: 13, bold: true })
  writeLines(page, linesOf(aboutInWords(sheet), (inside - 196) / 7.5, 2), [paper.edge, y + 17], { size: 7.5 })
  write(page, which, [paper.width - paper.edge - 62, y], { size: 9, bold: true })
  write(page, 'walked by', [right, y + 23], { size: 6.5, color: paperColours.soft })
  rule(page, [right + 32, y + 31], [right + 122, y + 31])
  write(page, 'on', [right + 125, y + 23], { size: 6.5, color: paperColours.soft })
  rule(page, [right + 135, y + 31], [paper.width - paper.edge, y + 31])
  rule(page, [paper.edge, TOP - 1], [paper.width - paper.edge, TOP - 1], 1.2)
}

/** Day, fitter, week, areas, and how long it is where that is known. */
function aboutInWords(sheet: RoundSheet): string {
  const { walkOn, weekOf, fitterName, crewName, areaNames, minutes, metres, levels, stops, isClosed } = sheet
  return [
    format(parseISO(walkOn), 'EEEE d MMMM yyyy'),
    `week ${getISOWeek(parseISO(weekOf ?? walkOn))}`,
    fitterName ?? crewName ?? 'whoever has time',
    `${stops.length} ${stops.length === 1 ? 'stop' : 'stops'}`,
    minutes !== null && `about ${durationInWords(minutes)}`,
    metres !== null && `${Math.round(metres)} m on foot`,
    levels !== null && `${levels} ${levels === 1 ? 'level' : 'levels'} to climb`,
    isClosed && 'closed',
    areaNames.join(', '),
  ]
    .filter((part) => part !== false && part !== '')
    .join(' · ')
}

/** @example durationInWords(200) // → '3 h 20 min' */
function durationInWords(minutes: number): string {
  const whole = Math.round(minutes)
  const [hours, rest] = [Math.floor(whole / 60), whole % 60]
  return [hours > 0 && `${hours} h`, (rest > 0 || hours === 0) && `${rest} min`].filter(Boolean).join(' ')
}

function foot(page: Page): void {
  const says = 'Isolation and permit by the site’s own procedure decide: this sheet authorises no work.'
  write(page, says, [paper.edge, paper.height - paper.edge - 9], { size: 6.5, color: paperColours.soft })
}
