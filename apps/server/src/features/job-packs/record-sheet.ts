import { RingCause, RingCondition } from '@glandkeeper/contract/events'
import type { Content, ContentColumns } from 'pdfmake/interfaces.js'
import { blank, heading, letter, soft, tickBox } from '../../platform/paper/pieces.ts'
import { blankRows, type Column, grid, lower, ticks, toWrite } from './form.ts'
import type { ValvePack } from './pack-of-valve.ts'

const ROW = 18
/** Rows for old rings: two more than the card counts, since nobody knows what is in the box. */
const SPARE_RINGS = 2
const MOST_RINGS = 24
const LEAST_RINGS = 8

/** To be filled in by hand, and typed in afterwards: every field of it is one of the entry. */
export function record({ card }: ValvePack): Content[] {
  return [oldRings(card.rings?.count ?? 0), newPacking(), measuredAndProved(card.proof), doneBy(), noteLines()]
}

function oldRings(expected: number): Content {
  const rows = Math.min(Math.max(expected + SPARE_RINGS, LEAST_RINGS), MOST_RINGS)
  const half = Math.ceil(rows / 2)
  const columns: Column[] = [
    { title: 'ring', width: 22 },
    { title: 'condition', width: '*' },
    { title: 'likely cause', width: '*' },
  ]
  const numbered = (from: number) =>
    grid(
      columns,
      Array.from({ length: half }, (_, index) => String(from + index)),
      ROW,
    )
  return {
    stack: [
      heading('Old rings, as they came out: 1 is the one under the follower'),
      beside([[numbered(1)], [numbered(half + 1)]]),
      legend('Condition', RingCondition.options),
      legend('Cause', RingCause.options),
      lower(toWrite('Rings in all', 40), 4),
    ],
  }
}

function legend(name: string, words: readonly string[]): Content {
  return {
    text: [{ text: `${name}: `, bold: true }, words.join(' · ')],
    fontSize: letter.usual,
    margin: [0, 3, 0, 0],
  }
}

const newColumns: Column[] = [
  { title: 'family', width: '*' },
  { title: 'section, mm', width: 58 },
  { title: 'batch', width: 90 },
  { title: 'rings', width: 40 },
  { title: 'torque on each nut, N·m', width: 92 },
  { title: 'gap left, mm', width: 60 },
  { title: 'gap right, mm', width: 60 },
]

function newPacking(): Content {
  return {
    stack: [
      heading('New packing'),
      grid(newColumns, blankRows(1), 26),
      lower({ columns: [{ text: 'Cut', width: 'auto' }, ticks(['butt', 'skive', 'die-formed'])], columnGap: 10 }, 4),
    ],
  }
}

function measuredAndProved(proof: readonly string[]): Content {
  const columns: Column[] = [
    { title: 'measured, mm', width: '*' },
    { title: 'stem', width: 62 },
    { title: 'bore', width: 62 },
  ]
  const proved = [...proof, 'Joints staggered, each ring seated by itself.', 'Nuts brought to their torque in steps.']
  return beside([
    [heading('Stem and bore'), grid(columns, ['at the top', 'half way down', 'at the bottom'], 22)],
    [heading('Proved'), ...proved.map((says) => lower(boxBefore(says), 2))],
  ])
}

/** A sentence that may take more than one line, with its box. */
const boxBefore = (says: string): ContentColumns => ({ columns: [{ ...tickBox(), width: 12 }, says], columnGap: 3 })

/** As wide as each other. */
const beside = (columns: readonly Content[][]): ContentColumns => ({
  columns: columns.map((stack) => ({ stack, width: '*' })),
  columnGap: 14,
})

function doneBy(): Content {
  const crew = ticks(['own crew', 'contractor'])
  return {
    stack: [
      heading('Done by'),
      lower({ columns: [{ ...crew, width: 130 }, wide('Name', 200), wide('Signed', 110)], columnGap: 14 }, 4),
      lower({ columns: [wide('Date', 120), wide('Time', 70), wide('Follow-up due on', 120)], columnGap: 14 }, 10),
    ],
  }
}

/** In a line with others it takes no more than it needs. */
const wide = (says: string, width: number): ContentColumns & { width: 'auto' } => ({ ...toWrite(says, width), width: 'auto' })

function noteLines(): Content {
  const lines = Array.from({ length: 4 }, () => lower(blank(545), 9))
  return {
    stack: [heading('What stood out'), ...lines, lower(soft('The code above opens the valve: type this in under Repack.'), 6)],
  }
}
