import { labelGrids, type LabelSize } from '@glandkeeper/contract/labels'
import type { Content } from 'pdfmake/interfaces.js'
import { codeOf } from '../../platform/paper/code.ts'
import { pdfOf } from '../../platform/paper/pdf.ts'
import { figure } from '../../platform/paper/pieces.ts'
import { firstLines, LINE, tagLettering } from '../../platform/paper/lettering.ts'

export interface Label {
  readonly tag: string
  readonly description: string
  readonly areaName: string
  /** What the code says. */
  readonly address: string
}

export interface LabelsToPrint {
  readonly labels: readonly Label[]
  readonly size: LabelSize
}

interface Print {
  /** Millimetres. Edge of a label to its print: what most printers leave white at the edge of a sheet, common practice, no source. */
  readonly clear: number
  /** Points. */
  readonly largest: number
  readonly small: number
}

const prints: Readonly<Record<LabelSize, Print>> = {
  '105 x 57': { clear: 5, largest: 34, small: 10 },
  '70 x 37': { clear: 4.5, largest: 22, small: 7.5 },
  '48 x 25': { clear: 1.5, largest: 15, small: 5.5 },
}

type Sheet = Print & (typeof labelGrids)[LabelSize]

const A4 = { width: 210, height: 297 }
const points = (millimetres: number) => (millimetres * 72) / 25.4
/** Share of the height that the tag may take. */
const TAG_SHARE = 0.55

/** Labels on sheets of A4, row by row from the top left, the whole block in the middle of the sheet. */
export async function labelSheets({ labels, size }: LabelsToPrint): Promise<Uint8Array<ArrayBuffer>> {
  const sheet = { ...labelGrids[size], ...prints[size] }
  const onOne = sheet.columns * sheet.rows
  const content = labels.flatMap((label, index): Content[] => [
    ...(index > 0 && index % onOne === 0 ? [{ text: '', pageBreak: 'before' as const }] : []),
    ...labelAt(cornerOf(sheet, index % onOne), label, sheet),
  ])
  return pdfOf({ size: 'A4', title: `Labels ${size} mm`, content })
}

interface Corner {
  readonly x: number
  readonly y: number
}

/** Top left of a label, in points. */
function cornerOf({ columns, rows, width, height }: Sheet, place: number): Corner {
  return {
    x: points((A4.width - columns * width) / 2 + (place % columns) * width),
    y: points((A4.height - rows * height) / 2 + Math.floor(place / columns) * height),
  }
}

/** What can be read on the left, the code on the right. */
function labelAt({ x, y }: Corner, { tag, description, areaName, address }: Label, sheet: Sheet): Content[] {
  const { clear, largest, small } = sheet
  const height = points(sheet.height - 2 * clear)
  // The quiet zone of the code keeps the print clear of it.
  const width = points(sheet.width - 2 * clear) - height
  const lettered = tagLettering(tag, { width, height: height * TAG_SHARE, largest })
  const left = Math.floor((height - lettered.lines.length * lettered.size * LINE) / (small * LINE))
  const says = [...firstLines(description, width / small, left - 1), ...firstLines(areaName, width / small, 1)]
  const corner = { x: x + points(clear), y: y + points(clear) }
  return [
    {
      stack: [
        ...lettered.lines.map((line) => ({ ...figure(line, lettered.size), noWrap: true })),
        ...says.map((line) => ({ text: line, font: 'Lettering', fontSize: small, noWrap: true })),
      ],
      absolutePosition: corner,
    },
    { ...codeOf(address, height), absolutePosition: { ...corner, x: corner.x + width } },
  ]
}
