import { createRequire } from 'node:module'
import type { ContentCanvas } from 'pdfmake/interfaces.js'
import { paperColours } from './colours.ts'

interface Square {
  readonly x: number
  readonly y: number
}

/**
 * The encoder of pdfmake's own `qr` node. The node itself draws squares of whole points only, which on a small label
 * wastes up to half of the room, and draws nothing where a long text has no room for that.
 */
const { default: encoder } = createRequire(import.meta.url)('pdfmake/js/qrEnc.js') as {
  default: { measure: (node: { qr: string; eccLevel: 'M' }) => { _canvas: [ground: Square, ...dark: Square[]]; _width: number } }
}
const DRAWN_SQUARE = 5
/** White squares that have to be left round a code. */
const QUIET = 4

/**
 * A QR code that can be read with 15 % of it dirty or torn, with its quiet zone inside `side`, in points.
 * At most 2331 bytes of text.
 */
export function codeOf(text: string, side: number): ContentCanvas {
  const { _canvas, _width } = encoder.measure({ qr: text, eccLevel: 'M' })
  const [, ...dark] = _canvas
  const square = side / (_width / DRAWN_SQUARE + 2 * QUIET)
  const place = (drawn: number) => (drawn / DRAWN_SQUARE + QUIET) * square
  return {
    canvas: runsOf(dark).map(({ x, y, squares }) => ({
      type: 'rect',
      x: place(x),
      y: place(y),
      w: squares * square,
      h: square,
      color: paperColours.ink,
      lineWidth: 0,
    })),
  }
}

/** Squares that touch within a row as one: a third less to draw, and no seams. */
function runsOf(dark: readonly Square[]): { x: number; y: number; squares: number }[] {
  const runs: { x: number; y: number; squares: number }[] = []
  for (const { x, y } of dark) {
    const last = runs.at(-1)
    if (last?.y === y && last.x + last.squares * DRAWN_SQUARE === x) last.squares += 1
    else runs.push({ x, y, squares: 1 })
  }
  return runs
}
