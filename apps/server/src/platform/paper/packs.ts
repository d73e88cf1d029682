import type { Content, ContentSection } from 'pdfmake/interfaces.js'
import { bytesOf, FOOTER, footLine, MARGIN } from './pdf.ts'

/** One page, or more where it is long, under a head of its own. */
export interface PackSheet {
  /** Drawn anew on each page, in a room of so many points. */
  readonly head: () => Content
  readonly headHeight: number
  readonly content: readonly Content[]
}

/** Sheets that belong together and are numbered together. */
export interface Pack {
  readonly sheets: readonly PackSheet[]
  readonly foot: string
}

/** Packs of A4 in one file: each counts its own pages, and beside that says which page of the file it is. */
export function pdfOfPacks(title: string, packs: readonly Pack[]): Promise<Uint8Array<ArrayBuffer>> {
  return bytesOf({ pageSize: 'A4', info: { title }, content: packs.flatMap((pack) => sectionsOf(pack, packs.length > 1)) })
}

function sectionsOf({ sheets, foot }: Pack, isOneOfMany: boolean): ContentSection[] {
  // The heads of all pages are drawn before the first foot: by then a pack knows how many it has.
  const pages: number[] = []
  return sheets.map(({ head, headHeight, content }) => ({
    section: [...content],
    pageMargins: [MARGIN, MARGIN + headHeight, MARGIN, MARGIN + FOOTER],
    header: (page: number): Content => {
      pages.push(page)
      return { stack: [head()], margin: [MARGIN, MARGIN, MARGIN, 0] }
    },
    footer: (page: number, all: number): Content =>
      footLine(
        [
          { text: foot, font: 'Lettering' },
          ...(isOneOfMany ? [{ text: `page ${page} of ${all} in this file`, width: 'auto' as const, noWrap: true }] : []),
        ],
        `${pages.indexOf(page) + 1} of ${pages.length}`,
      ),
  }))
}
