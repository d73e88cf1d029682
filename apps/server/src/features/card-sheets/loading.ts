import type { CutCard, PaperSize } from '@glandkeeper/contract/cut-cards'
import type { CardDrawings } from '@glandkeeper/drawings/cut-card'
import type { Content } from 'pdfmake/interfaces.js'
import { paperColours } from '../../platform/paper/colours.ts'
import { printed } from '../../platform/paper/pdf.ts'
import { basisOf } from './cautions.ts'
import { blank, figure, heading, letter, list, ruled, soft, tickBox } from '../../platform/paper/pieces.ts'
import {
  jointsInWords,
  jointsUnknown,
  loadHeading,
  spannersInWords,
  studsInWords,
  torqueUnknown,
  turnsOfNuts,
} from '@glandkeeper/drawings/cut-card-words'

export function jointAndLoadBlock(card: CutCard, { joints }: CardDrawings, size: PaperSize): Content {
  return {
    columns: [
      {
        stack: [
          heading('Joints, from above'),
          joints === null ? soft(jointsUnknown) : printed(joints),
          ...jointsInWords(card).map((text) => ({ text, fontSize: letter.small })),
        ],
        width: Math.max(112, (joints?.width ?? 0) * 0.75),
      },
      {
        stack: [heading(loadHeading), stepTable(card), ...loadRemarks(card), ...(size === 'A4' ? [basisOf(card)] : [])],
        width: '*',
      },
    ],
    columnGap: 10,
  }
}

function stepTable({ steps, load }: CutCard): Content {
  const rows = steps.map(({ torque, says }) => [
    figure(torque === null ? 'by hand' : torque.toFixed(1), 10),
    { text: says },
    tickBox(),
  ])
  const unknown = [blank(34), { text: torqueUnknown }, tickBox()]
  return ruled([44, '*', 12], load === null ? [...rows, unknown] : rows)
}

function loadRemarks({ load }: CutCard): Content[] {
  return [
    { ...soft(turnsOfNuts), margin: [0, 3, 0, 2] },
    ...(load?.says ?? []).map((text) => ({ text, fontSize: letter.small })),
    ...(load?.warning ? [{ text: load.warning, bold: true, color: paperColours.accent }] : []),
  ]
}

/** What is proved before the valve goes back, what comes after, and which spanner it all takes. */
export function proofBlocks(card: CutCard, size: PaperSize): Content[] {
  const proof = {
    stack: [
      heading('Proof, before it is handed back'),
      ruled(
        ['*', 12],
        card.proof.map((text) => [{ text }, tickBox()]),
      ),
    ],
  }
  const after = { stack: [heading('Afterwards'), ...card.followUp, toWrite('Due on', 70), gapsToWrite()] }
  const spanner = { stack: spannerLines(card) }
  const beside = (...parts: { stack: Content[] }[]): Content => ({
    columns: parts.map((part) => ({ ...part, width: '*' })),
    columnGap: 12,
  })
  return size === 'A5' ? [beside(proof, after), spanner] : [beside(proof, after, spanner)]
}

function toWrite(words: string, width: number): Content {
  return { columns: [{ text: words, width: 'auto' }, blank(width)], columnGap: 5, margin: [0, 4, 0, 4] }
}

function gapsToWrite(): Content {
  return {
    columns: [
      { text: 'Gaps read: left', width: 'auto' },
      { ...blank(30), width: 32 },
      { text: 'right', width: 'auto' },
      blank(30),
    ],
    columnGap: 4,
  }
}

function spannerLines(card: CutCard): Content[] {
  return [
    heading(`Spanner for ${studsInWords(card)}`),
    card.spanners.length === 0
      ? soft('Not known: try at the nut, and write the size here.')
      : { text: spannersInWords(card), font: 'Lettering' },
    ...(card.threadCautions.length === 0 ? [] : [list(card.threadCautions.map((line) => `Look-alike thread: ${line}`))]),
  ]
}
