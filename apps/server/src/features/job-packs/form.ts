import type { Content, ContentColumns, ContentTable, TableCell } from 'pdfmake/interfaces.js'
import { paperColours } from '../../platform/paper/colours.ts'
import { blank, letter, tickBox } from '../../platform/paper/pieces.ts'

const THIN = 0.75
const HAIR = 0.45

export interface Column {
  readonly title: string
  readonly width: number | '*'
  /** Of figures. */
  readonly isRight?: boolean
}

/** A table to fill in by hand: a line of small titles, and rows as high as a hand writes, each with the words it begins with. */
export function grid(columns: readonly Column[], begins: readonly string[], rowHeight: number): ContentTable {
  const rest = columns.slice(1).map(() => '')
  return {
    table: {
      widths: columns.map(({ width }) => width),
      heights: (row) => (row === 0 ? 'auto' : rowHeight),
      headerRows: 1,
      dontBreakRows: true,
      body: [titlesOf(columns), ...begins.map((says) => [says, ...rest])],
    },
    layout: {
      hLineWidth: () => THIN,
      vLineWidth: () => THIN,
      hLineColor: () => paperColours.ink,
      vLineColor: () => paperColours.ink,
      paddingLeft: () => 3,
      paddingRight: () => 3,
      paddingTop: () => 1.5,
      paddingBottom: () => 1.5,
    },
  }
}

const titlesOf = (columns: readonly Column[]): TableCell[] =>
  columns.map(({ title, isRight = false }) => ({
    text: title,
    fontSize: letter.small,
    color: paperColours.soft,
    alignment: isRight ? 'right' : 'left',
  }))

/** Rows with hairlines between, their titles again on each page. */
export function listed(columns: readonly Column[], rows: readonly (readonly Content[])[]): ContentTable {
  return {
    table: {
      widths: columns.map(({ width }) => width),
      headerRows: 1,
      dontBreakRows: true,
      body: [titlesOf(columns), ...rows.map((row) => row.map((cell) => cell as TableCell))],
    },
    layout: {
      hLineWidth: (line) => (line === 1 ? THIN : HAIR),
      vLineWidth: () => 0,
      hLineColor: () => paperColours.ink,
      paddingLeft: () => 0,
      paddingRight: () => 6,
      paddingTop: () => 1.5,
      paddingBottom: () => 1.5,
    },
  }
}

/** As many rows that begin with nothing. */
export const blankRows = (count: number): string[] => Array.from({ length: count }, () => '')

/** A box with its name behind it. */
function tick(says: string): ContentColumns {
  return {
    columns: [
      { ...tickBox(), width: 11 },
      { text: says, width: 'auto', noWrap: true },
    ],
    columnGap: 2,
  }
}

/** Boxes in a line, each with its name. */
export function ticks(names: readonly string[]): ContentColumns {
  return { columns: names.map((name) => ({ ...tick(name), width: 'auto' })), columnGap: 10 }
}

/** Its name, and a line to write on. */
export function toWrite(says: string, width: number): ContentColumns {
  return {
    columns: [
      { text: says, width: 'auto', noWrap: true },
      { ...blank(width), width },
    ],
    columnGap: 5,
  }
}

/** A piece so many points lower, clear of the one above. */
export function lower<Piece extends object>(piece: Piece, points: number): Piece & { margin: [number, number, number, number] } {
  return { ...piece, margin: [0, points, 0, 0] }
}
