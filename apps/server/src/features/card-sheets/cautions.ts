import type { CutCard, PaperSize } from '@glandkeeper/contract/cut-cards'
import type { Content } from 'pdfmake/interfaces.js'
import { paperColours } from '../../platform/paper/colours.ts'
import { blank, heading, letter, list, ruled, warned } from '../../platform/paper/pieces.ts'

/** Before any work: on A5 what is always said comes in front, what is said of this valve before it is loaded. */
export function cautionBlocks({ hazards, cautions }: CutCard, size: PaperSize): Content[] {
  const always = warning('Before a nut is loosened', cautions)
  const here = warning('This valve', hazards)
  if (size === 'A5') return [warned(always), warned(here)]
  return [
    warned([
      {
        columns: [
          // By their share, not by what is in them: a word without a blank would push the other off the paper.
          { stack: always, width: '50%' },
          { stack: here, width: '50%' },
        ],
        columnGap: 14,
      },
    ]),
  ]
}

function warning(title: string, lines: readonly string[]): Content[] {
  return [heading(title, paperColours.accent), { ...list(lines), fontSize: 7.6 }]
}

export function openBlock({ open }: CutCard): Content[] {
  if (open.length === 0) return []
  const rows = open.map(({ what, says }) => [{ text: says }, { text: what, font: 'Lettering', noWrap: true }, blank(56)])
  return [{ stack: [heading('Open: measure or ask, and write it here', paperColours.accent), ruled(['*', 'auto', 58], rows)] }]
}

/** Whose word the expected figures are. */
export function basisOf({ basis }: CutCard): Content {
  return { text: basis, fontSize: letter.small, color: paperColours.soft }
}
