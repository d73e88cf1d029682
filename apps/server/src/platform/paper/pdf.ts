import { createRequire } from 'node:module'
import type { Drawing } from '@glandkeeper/drawings/drawing'
import pdfmake from 'pdfmake'
import type { Column, Content, ContentSvg, TDocumentDefinitions } from 'pdfmake/interfaces.js'
import { paperColours } from './colours.ts'
import { letter } from './pieces.ts'
import { svgOf } from './svg-of.ts'

export type PaperSize = 'A4' | 'A5'

export interface Paper {
  readonly size: PaperSize
  readonly title: string
  readonly content: readonly Content[]
  /** Left out: the content fills the paper to its edges, and says itself where it stands. */
  readonly footer?: string
}

/** One px of a drawing is 1/96 inch, one point of paper 1/72 inch. */
export const POINTS_PER_PX = 0.75
/** Points: what printers leave white, and the room of a line at the foot. */
export const MARGIN = 15
export const FOOTER = 16

const require = createRequire(import.meta.url)
const fonts = {
  Words: {
    normal: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSerif.ttf'),
    bold: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSerif-Bold.ttf'),
  },
  Lettering: {
    normal: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
    bold: require.resolve('dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf'),
  },
}
const fontFiles = new Set(Object.values(fonts).flatMap((family) => Object.values(family)))

pdfmake.addFonts(fonts)
// A sheet is made of what is handed in: nothing is fetched, and no file but the fonts is opened.
pdfmake.setUrlAccessPolicy(() => false)
pdfmake.setLocalAccessPolicy((path) => fontFiles.has(path))

/** A drawing in px, printed at its true size. */
export function printed(drawing: Drawing): ContentSvg {
  return { svg: svgOf(drawing), width: drawing.width * POINTS_PER_PX }
}

/** Width between the margins, in px of a drawing. */
export function roomOn(size: PaperSize): number {
  return ({ A5: 419.53, A4: 595.28 }[size] - 2 * MARGIN) / POINTS_PER_PX
}

/** A sheet of paper in both faces of the look, with its page numbers. */
export function pdfOf({ size, title, content, footer }: Paper): Promise<Uint8Array<ArrayBuffer>> {
  return bytesOf({
    pageSize: size,
    pageMargins: footer === undefined ? 0 : [MARGIN, MARGIN, MARGIN, MARGIN + FOOTER],
    info: { title },
    content: [...content],
    ...(footer !== undefined && { footer: (page: number, pages: number) => footLine([footer], `${page} of ${pages}`) }),
  })
}

/** At the foot of a page: what is said of it, and at the right which it is. */
export function footLine(says: readonly Column[], which: string): Content {
  return {
    margin: [MARGIN, 2, MARGIN, 0],
    columns: [...says, { text: which, alignment: 'right', width: 50 }],
    fontSize: letter.small,
    color: paperColours.soft,
  }
}

export async function bytesOf(definition: TDocumentDefinitions): Promise<Uint8Array<ArrayBuffer>> {
  const inBothFaces: TDocumentDefinitions = {
    displayTitle: true,
    language: 'en-GB',
    defaultStyle: { font: 'Words', fontSize: letter.usual, lineHeight: 1.05, color: paperColours.ink },
    ...definition,
  }
  return Uint8Array.from(await pdfmake.createPdf(inBothFaces).getBuffer())
}
