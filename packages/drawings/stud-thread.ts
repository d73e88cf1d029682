import { formatMillimetres } from '@glandkeeper/units/format'
import type { Millimetre, Turn } from '@glandkeeper/units/quantity'
import { type Drawing, lettering, line, path, type Shape } from './drawing.ts'
import { threadDepth, threadProfile } from './thread-profile.ts'
import { uprightDimension } from './upright-dimension.ts'

export interface ThreadToDraw {
  readonly designation: string
  readonly pitch: Millimetre
  /** Flanks at 55° with round crests; otherwise at 60° with flat ones. */
  readonly isWhitworth: boolean
  /** The turns asked for, beside a flat, a quarter, a half and a whole. */
  readonly turns: Turn
  readonly room: number
}

const PX_PER_PITCH = 116
const CRESTS = 2
const TOP = 40
const LEFT = 4
const CORE = 22
const COLUMN_MOST = 76
/** Travels of a nut that a fitter makes by feel. */
const USUAL: readonly (readonly [turn: number, says: string])[] = [
  [1 / 6, 'a flat'],
  [1 / 4, 'a quarter'],
  [1 / 2, 'half'],
  [1, 'one turn'],
]

/** The edge of the stud with its crests, and beside it how far a nut goes in a flat, a quarter, a half and a whole turn. */
export function studThreadDrawing({ designation, pitch, isWhitworth, turns, room }: ThreadToDraw): Drawing {
  const edge = LEFT + CORE + threadDepth(isWhitworth) * PX_PER_PITCH
  const typed = Math.abs(turns)
  const isUsual = USUAL.some(([turn]) => Math.abs(turn - typed) < 1e-3)
  const travels = isUsual || !(typed > 0) || typed > CRESTS ? USUAL : [...USUAL, [typed, 'asked'] as const]
  const column = Math.min(COLUMN_MOST, (room - edge - 8) / travels.length)
  const start = TOP + PX_PER_PITCH / 2
  const bottom = TOP + CRESTS * PX_PER_PITCH
  const said = travels.map(([turn, says]) => `${says} ${formatMillimetres(turn * pitch, 2)}`)
  return {
    width: edge + 8 + travels.length * column,
    height: bottom + 32,
    says: `Thread of ${designation}, drawn large: the nut goes ${said.join(', ')}`,
    shapes: [
      path(threadProfile({ core: LEFT, edge, top: TOP, crests: CRESTS, pitch: PX_PER_PITCH, isWhitworth }), 'paperfill out'),
      path(line([edge, start], [edge + 8 + travels.length * column, start]), 'hair'),
      ...travels.flatMap(([turn, says], index) => {
        const x = edge + 8 + (index + 0.5) * column
        return travelled(x, start, start + turn * PX_PER_PITCH, says, turn * pitch, Math.abs(turn - typed) < 1e-3)
      }),
      lettering(`${designation}, pitch ${formatMillimetres(pitch, 3)}`, [LEFT, 14], { anchor: 'start', isBold: true }),
      lettering('drawn large; thread and travel to one scale', [LEFT, bottom + 24], { anchor: 'start', paint: 'soft' }),
    ],
  }
}

function travelled(x: number, from: number, to: number, says: string, travel: number, isAsked: boolean): Shape[] {
  return [
    ...uprightDimension(x, from, to, x),
    lettering(says, [x, from - 24], { isBold: isAsked }),
    lettering(travel.toFixed(2), [x, to + 30], { isBold: isAsked }),
  ]
}
