import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { Standing } from '@glandkeeper/contract/reserve'
import type { SettingValues } from '@glandkeeper/contract/settings'
import { cordNeeded } from '@glandkeeper/engines/gland/cord'
import type { Millimetre } from '@glandkeeper/units/quantity'
import { groupedBy } from '../../platform/grouped-by.ts'
import { notKnownOf } from '../cut-cards/index.ts'

export interface StopToCarryFor {
  readonly tag: string
  readonly standing: Standing
  readonly card: Pick<CutCard, 'family' | 'form' | 'gland' | 'cord' | 'rings' | 'cut' | 'spanners'>
}

export interface SpannerToCarry {
  readonly marking: string
  readonly acrossFlats: Millimetre
  /** Stops whose nuts it is the likeliest for, and those where it is the other hexagon a nut of that thread may have. */
  readonly likely: number
  readonly perhaps: number
}

export interface CordToCarry {
  readonly family: string
  /** As on the box of cord; the space itself where no listed cord fits it. */
  readonly section: string
  readonly size: Millimetre
  readonly isListed: boolean
  readonly metres: number
  readonly tags: readonly string[]
}

export interface RingsToCarry {
  readonly family: string
  readonly stemDiameter: Millimetre
  readonly boxBore: Millimetre
  /** For all of the valves. */
  readonly rings: number
  readonly tags: readonly string[]
}

interface Tagged {
  readonly says: string
  readonly tags: readonly string[]
}

/** What to take along on a round: spanners for every stop, packing for those that are likely to be repacked. */
export interface ToCarry {
  readonly spanners: readonly SpannerToCarry[]
  /** Stops whose stud thread nobody has recorded. */
  readonly withoutSpanner: readonly string[]
  readonly cords: readonly CordToCarry[]
  readonly pressedRings: readonly RingsToCarry[]
  /** Likely repacks for which nothing can be worked out, by what is not known. */
  readonly open: readonly Tagged[]
}

const MILLIMETRES_IN_A_METRE = 1000
/** Binary fractions must not make a metre of nothing. */
const DUST = 1e-9

/**
 * Cord is counted as the cut card has it wound: for each valve a wrap more than rings; for each size of ring one to try,
 * and the site's own share of waste. Whole metres are made at the end, once for each box of cord.
 */
export function carryFor(stops: readonly StopToCarryFor[], { cordWaste }: Pick<SettingValues, 'cordWaste'>): ToCarry {
  const likely = stops.filter(({ standing }) => standing === 'book' || standing === 'spent')
  const open = groupedBy(likely, ({ card }) => notKnownOf(card))
  const known = likely.filter(({ card }) => notKnownOf(card) === null)
  return {
    spanners: spannersOf(stops),
    withoutSpanner: stops.filter(({ card }) => card.spanners.length === 0).map(({ tag }) => tag),
    cords: [...groupedBy(known, cordKey).values()].flatMap((alike) => cordOf(alike, cordWaste) ?? []),
    pressedRings: [...groupedBy(known, pressedKey).values()].flatMap((alike) => pressedOf(alike) ?? []),
    open: [...open].map(([says, valves]) => ({ says, tags: tagsOf(valves) })),
  }
}

function spannersOf(stops: readonly StopToCarryFor[]): SpannerToCarry[] {
  const byMarking = new Map<string, SpannerToCarry>()
  for (const { card } of stops)
    for (const [place, { marking, acrossFlats }] of card.spanners.entries()) {
      const { likely, perhaps } = byMarking.get(marking) ?? { likely: 0, perhaps: 0 }
      const counts = place === 0 ? { likely: likely + 1, perhaps } : { likely, perhaps: perhaps + 1 }
      byMarking.set(marking, { marking, acrossFlats, ...counts })
    }
  return [...byMarking.values()].toSorted((one, other) => one.acrossFlats - other.acrossFlats)
}

const cordKey = ({ card: { form, family, cord } }: StopToCarryFor) =>
  form === 'braided' ? JSON.stringify([family, cord?.designation ?? cord?.space]) : null

const pressedKey = ({ card: { form, family, gland } }: StopToCarryFor) =>
  form === 'die-formed' ? JSON.stringify([family, gland.stemDiameter, gland.boxBore]) : null

/** Cord of one kind, for rings of whatever sizes. */
function cordOf(alike: readonly StopToCarryFor[], wasteShare: SettingValues['cordWaste']): CordToCarry | null {
  const cord = alike[0]?.card.cord ?? null
  if (cord === null) return null
  const sizes = groupedBy(alike, ({ card }) => JSON.stringify([card.gland.stemDiameter, card.cord?.space, card.rings?.count]))
  const lengths = [...sizes.values()].map((valves) => lengthFor(valves, wasteShare))
  const metres = lengths.reduce((sum, length) => sum + length, 0) / MILLIMETRES_IN_A_METRE
  return {
    family: alike[0]?.card.family ?? '',
    section: cord.designation ?? `${cord.space} mm`,
    size: cord.size ?? cord.space,
    isListed: cord.designation !== null,
    metres: Math.ceil(metres - DUST),
    tags: tagsOf(alike),
  }
}

/** Millimetres of cord for valves whose rings are the same. */
function lengthFor(valves: readonly StopToCarryFor[], wasteShare: SettingValues['cordWaste']): number {
  const { gland, cord, rings, cut } = valves[0]?.card ?? {}
  if (!gland || gland.stemDiameter === null || !cord || !rings || !cut) return 0
  const found = cordNeeded({
    stemDiameter: gland.stemDiameter,
    section: cord.space,
    cutAngle: cut.angle,
    rings: rings.count,
    valves: valves.length,
    cutting: 'wound on a bar',
    wasteShare,
  })
  return found.ok ? found.needed : 0
}

function pressedOf(alike: readonly StopToCarryFor[]): RingsToCarry | null {
  const { family, gland } = alike[0]?.card ?? {}
  if (!gland || gland.stemDiameter === null || gland.boxBore === null) return null
  const rings = alike.reduce((sum, { card }) => sum + (card.rings?.count ?? 0), 0)
  return { family: family ?? '', stemDiameter: gland.stemDiameter, boxBore: gland.boxBore, rings, tags: tagsOf(alike) }
}

const tagsOf = (stops: readonly StopToCarryFor[]) => stops.map(({ tag }) => tag)
