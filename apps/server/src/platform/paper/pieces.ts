import type { Content, ContentCanvas, ContentText, ContentUnorderedList, TableCell } from 'pdfmake/interfaces.js'
import { paperColours } from './colours.ts'

/** Sizes in points; a screen px is three quarters of one. */
export const letter = { small: 7, usual: 8.2, heading: 9.5, figure: 17, tag: 22, longTag: 14 } as const
const LINE = { outline: 1.2, thin: 0.75, hair: 0.45 } as const
export const INSIDE_FRAME = 9

export const heading = (text: string, color: string = paperColours.ink): ContentText => ({
  text,
  bold: true,
  fontSize: letter.heading,
  color,
  margin: [0, 0, 0, 2],
})

export const soft = (text: string): ContentText => ({ text, color: paperColours.soft })

/** What was measured or worked out is lettered, what we say is in words. */
export const figure = (text: string, fontSize: number): ContentText => ({ text, font: 'Lettering', bold: true, fontSize })

/** A line to write on. */
export const blank = (width: number): ContentCanvas => ({
  canvas: [{ type: 'line', x1: 0, y1: 10, x2: width, y2: 10, lineWidth: LINE.thin, lineColor: paperColours.ink }],
})

export const tickBox = (): ContentCanvas => ({
  canvas: [{ type: 'rect', x: 0, y: 0, w: 9, h: 9, lineWidth: 1, lineColor: paperColours.ink }],
})

export const list = (lines: readonly string[]): ContentUnorderedList => ({ ul: [...lines], markerColor: paperColours.ink })

/** The drawing's frame: one block under the other, a thin line between; a block is never torn over two sheets. */
export function framed(blocks: readonly Content[]): Content {
  return {
    table: { widths: ['*'], dontBreakRows: true, body: blocks.map((block): TableCell[] => [block as TableCell]) },
    layout: {
      hLineWidth: (line, { table }) => (line === 0 || line === table.body.length ? LINE.outline : LINE.thin),
      vLineWidth: () => LINE.outline,
      hLineColor: () => paperColours.ink,
      vLineColor: () => paperColours.ink,
      paddingLeft: () => INSIDE_FRAME,
      paddingRight: () => INSIDE_FRAME,
      paddingTop: () => 4,
      paddingBottom: () => 4,
    },
  }
}

/** Rows with hairlines between, as in a parts list. */
export function ruled(widths: readonly (number | 'auto' | '*')[], rows: readonly (readonly Content[])[]): Content {
  return {
    table: { widths: [...widths], dontBreakRows: true, body: rows.map((row) => row.map((cell) => cell as TableCell)) },
    layout: {
      hLineWidth: (line, { table }) => (line === table.body.length ? 0 : LINE.hair),
      vLineWidth: () => 0,
      hLineColor: () => paperColours.soft,
      paddingLeft: () => 0,
      paddingRight: () => 6,
      paddingTop: () => 2,
      paddingBottom: () => 2,
    },
  }
}

/** A red bar at its left: read this before a hand moves. */
export function warned(content: readonly Content[]): Content {
  return {
    table: { widths: ['*'], body: [[{ stack: [...content] }]] },
    layout: {
      hLineWidth: () => 0,
      vLineWidth: (line) => (line === 0 ? 3.5 : 0),
      vLineColor: () => paperColours.accent,
      paddingLeft: () => 8,
      paddingRight: () => 0,
      paddingTop: () => 0,
      paddingBottom: () => 0,
    },
  }
}
