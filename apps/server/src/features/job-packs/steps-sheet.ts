import type { Content } from 'pdfmake/interfaces.js'
import { blank, figure, heading, letter, ruled, soft, tickBox } from '../../platform/paper/pieces.ts'
import type { Drawn } from './drawn-from-store.ts'
import { ticks } from './form.ts'
import type { ValvePack } from './pack-of-valve.ts'
import { type Step, stepsOf } from './steps.ts'

const IN_A_LINE = 6

/** What to draw from the store, and the work in order, with a box to tick for each. */
export function partsAndSteps({ card, drawn }: ValvePack): Content[] {
  return [
    { stack: [heading('From the store'), ruled([46, '*', 118, 12], drawn.map(drawnRow))] },
    {
      stack: [
        heading('Steps, in this order'),
        soft('Torque, gap and limits stand on the cut card. Where something is not as it says, stop and ask.'),
        ruled([16, '*', 12], stepsOf(card).map(stepRow)),
      ],
    },
  ]
}

function drawnRow({ figure: much, says, hasBatch }: Drawn): Content[] {
  return [
    much === null ? blank(38) : figure(much, 10),
    { text: says },
    hasBatch
      ? {
          columns: [
            { text: 'batch', width: 'auto' },
            { ...blank(82), width: 84 },
          ],
          columnGap: 4,
        }
      : '',
    tickBox(),
  ]
}

function stepRow({ says, ticks: names }: Step, index: number): Content[] {
  const lines = Array.from({ length: Math.ceil(names.length / IN_A_LINE) }, (_, line) =>
    names.slice(line * IN_A_LINE, (line + 1) * IN_A_LINE),
  )
  const boxes = lines.map((line): Content => ({ ...ticks(line), margin: [0, 2, 0, 0] }))
  return [
    { text: String(index + 1), font: 'Lettering', bold: true, fontSize: letter.heading },
    { stack: [says, ...boxes] },
    names.length > 0 ? '' : tickBox(),
  ]
}
