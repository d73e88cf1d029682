import type { Drawing, Paint, PathShape, TextShape } from '@glandkeeper/drawings/drawing'
import { paperColours as colour } from './colours.ts'

const { ink, soft, accent, hatch, sheet, steel, pack } = colour

/** What look.css says of each class of line, written out: paper has no style sheet. */
const outline = `stroke="${ink}" stroke-width="1.6" stroke-linejoin="round"`
const thin = `stroke="${ink}" stroke-width="1"`
const dimension = `fill="none" stroke="${ink}" stroke-width=".8"`
const paints: Readonly<Record<Paint, string>> = {
  out: `fill="none" ${outline}`,
  thin: `fill="none" ${thin}`,
  hair: `fill="none" stroke="${soft}" stroke-width=".6"`,
  centre: `fill="none" stroke="${soft}" stroke-width="1" stroke-dasharray="14 3 3 3"`,
  ghost: `fill="none" ${thin} stroke-dasharray="3 2"`,
  dim: `${dimension} marker-start="url(#arrow-start)" marker-end="url(#arrow-end)"`,
  'dim end': `${dimension} marker-end="url(#arrow-end)"`,
  hotline: `fill="none" stroke="${accent}" stroke-width="1.6"`,
  hothair: `fill="none" stroke="${accent}" stroke-width=".8"`,
  hotfill: `fill="${accent}"`,
  'steel out': `fill="url(#h-steel)" ${outline}`,
  'steel2 out': `fill="url(#h-steel2)" ${outline}`,
  'pack out': `fill="url(#h-pack)" ${outline}`,
  'pack thin': `fill="url(#h-pack)" ${thin}`,
  'pack ghost': `fill="url(#h-pack)" ${thin} stroke-dasharray="3 2"`,
  'plain out': `fill="${steel}" ${outline}`,
  'paperfill out': `fill="${sheet}" ${outline}`,
  paperfill: `fill="${sheet}"`,
  medium: 'fill="url(#h-medium)"',
}

const hatching = (id: string, size: number, lines: string, angle: number, wash: string) =>
  `<pattern id="${id}" width="${size}" height="${size}" patternUnits="userSpaceOnUse" patternTransform="rotate(${angle})">` +
  `<rect width="${size}" height="${size}" fill="${wash}"/><path d="${lines}" stroke="${hatch}" stroke-width=".7"/></pattern>`

/** The reader of pdfmake turns no arrow by itself, so each end has one of its own. */
const arrow = (id: string, tip: number, d: string) =>
  `<marker id="${id}" viewBox="0 0 10 6" refX="${tip}" refY="3" markerWidth="9" markerHeight="6" ` +
  `markerUnits="userSpaceOnUse" orient="auto"><path d="${d}" fill="${ink}"/></marker>`

const definitions = [
  '<defs>',
  hatching('h-steel', 5, 'M0 0V5', 45, steel),
  hatching('h-steel2', 5, 'M0 0V5', -45, steel),
  hatching('h-pack', 4.2, 'M0 0V4.2M0 0H4.2', 45, pack),
  `<pattern id="h-medium" width="8" height="8" patternUnits="userSpaceOnUse"><rect width="8" height="8" fill="${colour.medium}"/>`,
  `<g fill="${hatch}"><circle cx="2" cy="2" r=".8"/><circle cx="6" cy="6" r=".8"/></g></pattern>`,
  arrow('arrow-start', 0, 'M10 .6L0 3L10 5.4Z'),
  arrow('arrow-end', 10, 'M0 .6L10 3L0 5.4Z'),
  '</defs>',
].join('')

/**
 * A drawing as SVG text with every paint written out, as the SVG reader of pdfmake takes it: no style sheet, no script,
 * nothing from elsewhere. Shapes keep their coordinates.
 */
export function svgOf({ width, height, says, shapes }: Drawing): string {
  const pieces = shapes.map((shape) => (shape.kind === 'path' ? pathOf(shape) : textOf(shape)))
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">` +
    `<title>${escaped(says)}</title>${definitions}${pieces.join('')}</svg>`
  )
}

function pathOf({ d, paint, isDashed = false }: PathShape): string {
  const dashes = isDashed ? ` stroke-dasharray="${paint === 'hotline' ? '6 3' : '4 3'}"` : ''
  return `<path d="${escaped(d)}" ${paints[paint]}${dashes}/>`
}

const letters = { ink, soft, hot: accent } as const
/** Mean advance of a figure in the lettering face, in parts of its size: for the dashes under it. */
const ADVANCE = { usual: 0.573, bold: 0.626 } as const

function textOf(shape: TextShape): string {
  const { x, y, says, anchor, paint, isBold, size, isDashed = false, on } = shape
  const place =
    `x="${x}" y="${y}" text-anchor="${anchor}" font-family="Lettering" font-size="${size}"` +
    (isBold ? ' font-weight="bold"' : '')
  const words = escaped(says)
  // The reader draws a letter's outline over its face, so the ground is a copy of its own, beneath.
  const ground = on ? `<text ${place} fill="none" stroke="${pack}" stroke-width="5" stroke-linejoin="round">${words}</text>` : ''
  return `${ground}<text ${place} fill="${letters[paint]}">${words}</text>${isDashed ? dashesUnder(shape) : ''}`
}

function dashesUnder({ x, y, says, anchor, isBold, size, paint }: TextShape): string {
  const wide = says.length * size * (isBold ? ADVANCE.bold : ADVANCE.usual)
  const from = x - { start: 0, middle: wide / 2, end: wide }[anchor]
  return `<path d="M${from} ${y + 3}H${from + wide}" fill="none" stroke="${letters[paint]}" stroke-width="1" stroke-dasharray="4 3"/>`
}

/** Text for XML. Characters that XML forbids are left out. */
function escaped(text: string): string {
  return (
    text
      // oxlint-disable-next-line no-control-regex -- these are the characters meant
      .replaceAll(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;')
      .replaceAll('"', '&quot;')
  )
}
