import type { Content } from 'pdfmake/interfaces.js'
import { firstOfAll } from '@glandkeeper/drawings/cut-card-words'
import { codeOf } from '../../platform/paper/code.ts'
import { paperColours } from '../../platform/paper/colours.ts'
import { firstLines, tagLettering } from '../../platform/paper/lettering.ts'
import type { PackSheet } from '../../platform/paper/packs.ts'
import { figure, heading, soft } from '../../platform/paper/pieces.ts'
import { dayInWords } from './days-in-words.ts'
import type { ValvePack } from './pack-of-valve.ts'

interface HeadSize {
  /** Points: the side of the code, and the largest a tag is lettered. */
  readonly code: number
  readonly tag: number
  /** Lines for what the valve is; the first page says it below, in full. */
  readonly lines: number
}

/** The first page is found in a pile by its tag, and its code read at arm's length. */
export const firstHead: HeadSize = { code: 84, tag: 34, lines: 0 }
export const usualHead: HeadSize = { code: 52, tag: 22, lines: 1 }

const INSIDE = 565
const NAME_WIDTH = 118
const GAP = 8
const SMALL = 8.5

interface SheetName {
  readonly name: string
  /** What the pack belongs to. */
  readonly note: string
}

/** What stands above each page of a pack: tag, what the valve is, which sheet this is, and the code that opens the valve. */
export function headOf(
  { card, address }: ValvePack,
  { name, note }: SheetName,
  { code, tag, lines }: HeadSize,
): Pick<PackSheet, 'head' | 'headHeight'> {
  const width = INSIDE - code - NAME_WIDTH - 2 * GAP
  const lettered = tagLettering(card.tag, { width, height: tag * 1.5, largest: tag })
  const head = (): Content => ({
    columns: [
      {
        stack: [
          ...lettered.lines.map((line) => ({ ...figure(line, lettered.size), noWrap: true })),
          ...inLettering(card.description, width, lines),
          { text: firstOfAll, color: paperColours.accent, bold: true, noWrap: true },
        ],
        width,
      },
      {
        stack: [heading(name), ...inLettering(note, NAME_WIDTH, 1), soft(dayInWords(card.madeOn))],
        width: NAME_WIDTH,
        alignment: 'right',
      },
      { ...codeOf(address, code), width: code },
    ],
    columnGap: GAP,
  })
  return { head, headHeight: code + 2 }
}

const inLettering = (says: string, width: number, lines: number): Content[] =>
  firstLines(says, width / SMALL, lines).map((text) => ({ text, font: 'Lettering', fontSize: SMALL, noWrap: true }))
