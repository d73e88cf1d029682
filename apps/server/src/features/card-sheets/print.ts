import type { CutCard, PaperSize } from '@glandkeeper/contract/cut-cards'
import { cardDrawings } from '@glandkeeper/drawings/cut-card'
import type { Content } from 'pdfmake/interfaces.js'
import { pdfOf, roomOn } from '../../platform/paper/pdf.ts'
import { framed } from '../../platform/paper/pieces.ts'
import { basisOf, cautionBlocks, openBlock } from './cautions.ts'
import { cordBlock, sectionBlock, titleBlock } from './cutting.ts'
import { jointAndLoadBlock, proofBlocks } from './loading.ts'

const FRAME_LINES = 8

/** The card as a PDF: on A5 what is cut in front and what is loaded behind, on A4 all on one side where it fits. */
export async function printedCard(card: CutCard, size: PaperSize): Promise<Uint8Array<ArrayBuffer>> {
  const content = [framed([titleBlock(card, size), ...cardUnderTitle(card, size)])]
  return pdfOf({ size, title: `Cut card ${card.tag}`, content, footer: footerOf(card) })
}

/** All of a card but its title, block by block. */
export function cardUnderTitle(card: CutCard, size: PaperSize): Content[] {
  const drawings = cardDrawings(card, { section: 224, sectionHeight: 210, cord: roomInFrame(size) })
  return [
    sectionBlock(card, drawings, size),
    cordBlock(card, drawings),
    ...cautionBlocks(card, size),
    jointAndLoadBlock(card, drawings, size),
    ...proofBlocks(card, size),
    ...openBlock(card),
    ...(size === 'A5' ? [basisOf(card)] : []),
  ]
}

/** A cord may lie from line to line of the frame, since each ring that fits unbroken is one less to measure. */
function roomInFrame(size: PaperSize): number {
  return roomOn(size) - FRAME_LINES
}

function footerOf({ tag }: CutCard): string {
  return `Cut card ${tag} · it does not authorise work`
}
