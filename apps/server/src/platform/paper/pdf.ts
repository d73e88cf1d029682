import { createRequire } from 'node:module'
import type { Drawing } from '@glandkeeper/drawings/drawing'
import pdfmake from 'pdfmake'
import type { Content, ContentSvg, TDocumentDefinitions } from 'pdfmake/interfaces.js'
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
const POINTS_PER_PX = 0.75
const MARGIN = 15
const FOOTER = 16

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
export async function pdfOf({ size, title, content, footer }: Paper): Promise<Uint8Array<ArrayBuffer>> {
  const definition: TDocumentDefinitions = {
    pageSize: size,
    pageMargins: footer === undefined ? 0 : [MARGIN, MARGIN, MARGIN, MARGIN + FOOTER],
    info: { title },
    displayTitle: true,
    language: 'en-GB',
    content: [...content],
    ...(footer !== undefined && {
      footer: (page: number, pages: number): Content => ({
        margin: [MARGIN, 2, MARGIN, 0],
        columns: [footer, { text: `${page} of ${pages}`, alignment: 'right', width: 50 }],
        fontSize: letter.small,
        color: paperColours.soft,
      }),
    }),
    defaultStyle: { font: 'Words', fontSize: letter.usual, lineHeight: 1.05, color: paperColours.ink },
  }
  return Uint8Array.from(await pdfmake.createPdf(definition).getBuffer())
}
