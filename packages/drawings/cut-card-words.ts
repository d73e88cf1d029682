import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { CardDrawings } from './cut-card.ts'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'

const NO_BREAK_SPACE = '\u00a0'

/** Before anything else on a card, wherever its cautions stand. */
export const firstOfAll = 'First isolate, lock, drain, vent and prove zero: see the cautions.'
export const loadHeading = 'Load, N·m on each nut'
export const turnsOfNuts = 'Nuts a quarter turn at a time, alternately and equally.'
export const torqueUnknown = 'torque not worked out: see what is open below, and ask before loading'
export const jointsUnknown = 'Ring count not known: each joint 90° or more from the one below.'

/** What goes through the valve and what packs it, in a line. As in 'condensate, 118 °C, 3 bar · graphite braid'. */
export function serviceInWords({ service, fluid, phase, temperature, pressure, family }: CutCard): string {
  const what = fluid || phase
  const line = [
    service === what ? what : `${service}: ${what}`,
    temperature === null ? 'temperature not recorded' : `${temperature}${NO_BREAK_SPACE}°C`,
    pressure === null ? 'pressure not recorded' : `${pressure}${NO_BREAK_SPACE}bar`,
  ].join(', ')
  return `${line} · ${family ?? 'packing not recorded'}`
}

/** Where the joints lie, for a person with a clock. As in ['Ring 1 goes in first, joint at 12 …', '1 at 12, 2 at 3, 3 at 6']. */
export function jointsInWords({ joints, jointNotes }: CutCard): string[] {
  if (joints.length === 0) return jointNotes
  return [...jointNotes, `${joints.map(({ ring, clock }) => `${ring} at ${clock}`).join(', ')}.`]
}

/** Each spanner that may fit. As in '18 mm (present size) or 19 mm (nuts made before 1982)'. */
export function spannersInWords({ spanners }: CutCard): string {
  return spanners.map(({ marking, hexagon }) => `${marking} (${hexagon})`).join(' or ')
}

export interface MainFigure {
  readonly figure: string | null
  readonly says: string
  readonly range: string | null
}

/** The figures read off at arm's length, each with its words; null has a line to write on. */
export function mainFigures({ form, rings, cord, cut, gap }: CutCard): MainFigure[] {
  const section = cord ? millimetres(cord.space) : 'a section not known'
  const bar = cut ? `${Number(cut.mandrel.toFixed(1))}${NO_BREAK_SPACE}mm` : 'a'
  const toCut: MainFigure[] = [
    { figure: cut && cut.length.toFixed(1), says: 'mm each, mid-width', range: null },
    { figure: cut?.wraps ? String(cut.wraps) : null, says: `wraps on ${bar} bar`, range: null },
  ]
  return [
    { figure: rings && String(rings.count), says: `rings of ${section}`, range: null },
    // Pressed rings are not cut: they have neither.
    ...(form === 'die-formed' ? [] : toCut),
    {
      figure: gap && gap.expected.toFixed(1),
      says: 'mm gap when loaded',
      range: gap && `${gap.least.toFixed(1)} to ${gap.most.toFixed(1)} is right`,
    },
  ]
}

/** What to do when the gap is another, and which cord to take. */
export function remarksOf({ form, gap, cord }: CutCard): string[] {
  return [
    ...(gap ? [`Outside that, stop and ask. ${gap.above} ${gap.below}`] : []),
    cord ? `${form === 'die-formed' ? 'Rings' : 'Cord'}: ${cord.says}.` : 'Cord: measure bore and stem first.',
  ]
}

/** As in '2 studs, M12'. */
export function studsInWords({ gland: { studThread, studCount } }: CutCard): string {
  return `${studCount === null ? 'studs not counted' : `${studCount} studs`}, ${studThread ?? 'thread not recorded'}`
}

export function cordHeading(
  { cord: space }: CutCard,
  { cord, cordIsBroken }: Pick<CardDrawings, 'cord' | 'cordIsBroken'>,
): string {
  if (cord === null) return space === null ? 'No cord to draw: bore or stem is not measured' : 'No cord to cut'
  return cordIsBroken
    ? 'Longer than the room here: ends and section at full size, the middle left out'
    : 'Lay the cord here: full size when printed at 100 %'
}
