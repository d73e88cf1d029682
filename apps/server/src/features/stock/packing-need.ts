import type { SettingValues } from '@glandkeeper/contract/settings'
import { cordNeeded } from '@glandkeeper/engines/gland/cord'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'
import { type CardFigures, notKnownOf } from '../cut-cards/index.ts'
import { amountInWords } from './amount-in-words.ts'

export interface CordNeed {
  readonly kind: 'cord'
  readonly family: string
  /** Listed size of the cord, as it is taken from the store; what it is rolled to is another figure. */
  readonly sectionMm: number
  /** As on the box of cord: `8 mm`, `5/16 in`. */
  readonly designation: string
  readonly stemDiameterMm: number
  readonly rings: number
  readonly ringLengthMm: number
  /** Wound on a bar of stem size in one piece: one more than rings. */
  readonly wraps: number
  /** Of the piece with all wraps. */
  readonly pieceMm: number
  /** Of the piece, and the site's share of waste. */
  readonly metres: number
}

export interface RingNeed {
  readonly kind: 'die-formed ring'
  readonly family: string
  readonly boxBoreMm: number
  readonly stemDiameterMm: number
  readonly rings: number
}

/** Packing one repack of a valve takes from the store. */
export type PackingNeed = CordNeed | RingNeed
/** Why it cannot be worked out. */
export interface OpenNeed {
  readonly open: string
}

const MILLIMETRES_IN_A_METRE = 1000

/** What the figures of a cut card take from the store, wound as the card has it. */
export function packingNeedOf(
  family: string | null,
  card: CardFigures,
  { cordWaste }: Pick<SettingValues, 'cordWaste'>,
): PackingNeed | OpenNeed {
  const notKnown = notKnownOf(card)
  if (notKnown !== null) return { open: notKnown }
  const { form, gland, cord, rings, cut } = card
  const { boxBore, stemDiameter } = gland
  if (family === null || boxBore === null || stemDiameter === null || cord === null || rings === null)
    return { open: 'packing not known' }
  if (form === 'die-formed')
    return { kind: 'die-formed ring', family, boxBoreMm: boxBore, stemDiameterMm: stemDiameter, rings: rings.count }
  const { designation, size, space } = cord
  if (designation === null || size === null) return { open: `no listed cord fits a space of ${millimetres(space)}` }
  const found = cordNeeded({
    stemDiameter,
    section: space,
    rings: rings.count,
    valves: 1,
    cutting: 'wound on a bar',
    trialRings: 0,
    wasteShare: cordWaste,
    ...(cut && { cutAngle: cut.angle }),
  })
  if (!found.ok || cut === null || cut.wraps === null) return { open: 'its figures do not go together' }
  return {
    kind: 'cord',
    family,
    sectionMm: size,
    designation,
    stemDiameterMm: stemDiameter,
    rings: rings.count,
    ringLengthMm: cut.length,
    wraps: cut.wraps,
    pieceMm: found.perValve,
    metres: found.needed / MILLIMETRES_IN_A_METRE,
  }
}

/** What it takes of an item: metres of cord, or pieces. */
export const amountOf = (need: PackingNeed): number => (need.kind === 'cord' ? need.metres : need.rings)

/** One need as a person would write it on a chit. */
export function needInWords(need: PackingNeed): string {
  if (need.kind === 'cord') return `${ringsInWords(need.rings)} of ${packingInWords(need)}, ${amountInWords(need.metres, 'm')}`
  return `${need.rings} ${packingInWords(need)}`
}

/** The packing alone, without how much of it: alike for valves that take the same. */
export function packingInWords(need: PackingNeed): string {
  if (need.kind === 'cord') {
    const { family, designation, sectionMm } = need
    const section = designation.endsWith(' mm') ? designation : `${designation} (${millimetres(sectionMm)})`
    return `${family}, ${section.replaceAll(' ', '\u00a0')}`
  }
  return `pressed rings of ${need.family}, stem ${millimetres(need.stemDiameterMm)} in bore ${millimetres(need.boxBoreMm)}`
}

export const ringsInWords = (rings: number): string => (rings === 1 ? '1 ring' : `${rings} rings`)
