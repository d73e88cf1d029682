import type { CutCard, PaperSize } from '@glandkeeper/contract/cut-cards'
import type { CardDrawings } from '@glandkeeper/drawings/cut-card'
import {
  cordHeading,
  firstOfAll,
  type MainFigure,
  mainFigures,
  remarksOf,
  serviceInWords,
} from '@glandkeeper/drawings/cut-card-words'
import { parseISO } from 'date-fns/parseISO'
import { format } from 'date-fns/format'
import type { Content, ContentText, TableCell } from 'pdfmake/interfaces.js'
import { paperColours } from '../../platform/paper/colours.ts'
import { tagLettering } from '../../platform/paper/lettering.ts'
import { POINTS_PER_PX, printed, roomOn } from '../../platform/paper/pdf.ts'
import { blank, figure, heading, INSIDE_FRAME, letter, list, soft } from '../../platform/paper/pieces.ts'

const LONG_TAG = 12
const DATE_WIDTH = 90

export function titleBlock(card: CutCard, size: PaperSize): Content {
  const isLong = card.tag.length > LONG_TAG
  const what = [card.description, soft(serviceInWords(card)), { text: firstOfAll, color: paperColours.accent, bold: true }]
  return {
    columns: [
      // A long tag takes lines of its own.
      ...(isLong ? [] : [{ ...figure(card.tag, letter.tag), width: 'auto', noWrap: true }]),
      { stack: isLong ? [...longTag(card.tag, size), ...what] : what, width: '*', margin: [0, 2, 0, 0] },
      {
        stack: ['Cut card', soft(format(parseISO(card.madeOn), 'd MMMM yyyy'))],
        width: 'auto',
        alignment: 'right',
        noWrap: true,
        margin: [0, 2, 0, 0],
      },
    ],
    columnGap: 9,
  }
}

/** A word wider than its column would push the frame off the paper. */
function longTag(tag: string, size: PaperSize): Content[] {
  const width = roomOn(size) * POINTS_PER_PX - 2 * INSIDE_FRAME - DATE_WIDTH
  const lettered = tagLettering(tag, { width, height: 2 * letter.tag, largest: letter.longTag })
  return lettered.lines.map((line) => figure(line, lettered.size))
}

export function sectionBlock(card: CutCard, { section, sectionNote }: CardDrawings, size: PaperSize): Content {
  const notes = (card.rings?.says ?? []).map((text): Content => small(text))
  const isWide = size === 'A4'
  const columns: Content = {
    columns: [
      { stack: [printed(section), small(sectionNote)], width: 172 },
      {
        stack: [
          factsTable(card),
          ...remarksOf(card).map((text): Content => ({ text, margin: [0, 3, 0, 0] })),
          ...(isWide ? notes : []),
        ],
        width: '*',
      },
    ],
    columnGap: 8,
  }
  return { stack: [columns, ...(isWide ? [] : notes)] }
}

const small = (text: string): ContentText => ({ ...soft(text), fontSize: letter.small, margin: [0, 2, 0, 0] })

function factsTable(card: CutCard): Content {
  return {
    table: { widths: [54, '*'], body: mainFigures(card).map(factRow) },
    layout: { defaultBorder: false, paddingLeft: () => 0, paddingRight: () => 4, paddingTop: () => 0, paddingBottom: () => 0 },
  }
}

function factRow({ figure: value, says, range }: MainFigure): TableCell[] {
  return [
    value === null ? { ...blank(46), margin: [0, 5, 0, 0] } : { ...figure(value, letter.figure), alignment: 'right' },
    { stack: range === null ? [says] : [says, soft(range)], margin: [0, 7, 0, 0] },
  ]
}

export function cordBlock(card: CutCard, drawings: CardDrawings): Content {
  const { cord, ruler } = drawings
  const title = heading(cordHeading(card, drawings))
  if (cord === null) return { stack: [title, list(card.cutNotes)] }
  return {
    stack: [
      title,
      { ...printed(cord), margin: [2 - INSIDE_FRAME, 0, 2 - INSIDE_FRAME, 0] },
      {
        margin: [0, 4, 0, 0],
        columns: [
          { ...list(card.cutNotes), width: '*', fontSize: letter.small },
          { stack: [printed(ruler), small('50 mm by your own rule, or the sheet is not at 100 %')], width: 160 },
        ],
        columnGap: 10,
      },
    ],
  }
}
