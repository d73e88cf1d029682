import {
  type Bar,
  bar,
  type Celsius,
  celsius,
  type Day,
  days,
  type Megapascal,
  megapascals,
  type Ratio,
  ratio,
} from '@glandkeeper/units/quantity'
import type { Source } from '../source.ts'
import { type Ph, ph } from './acidity.ts'
import type { Caution } from './cautions.ts'

/** Braided: cord, cut to rings. Die-formed: rings pressed to size. */
export type FamilyForm = 'braided' | 'die-formed'

/** What the arithmetic and the judgement need of a kind of packing. */
export interface FamilyFigures {
  readonly lowestTemperature: Celsius
  readonly highestTemperature: Celsius
  /** Another limit in steam: it keeps air from graphite, and softens aramid. */
  readonly highestSteamTemperature: Celsius
  readonly highestPressure: Bar
  readonly lowestPh: Ph
  readonly highestPh: Ph
  /** Share of its height a set of rings loses under load. */
  readonly consolidation: Ratio
  /** Friction coefficient of packing on stem. */
  readonly friction: Ratio
  /** Stress towards stem and bore, as a share of the stress along the stem. */
  readonly lateralRatio: Ratio
  /** Less gland stress than this does not seat the rings, whatever the pressure. */
  readonly stressFloor: Megapascal
  readonly usualLife: Day
}
export type FigureName = keyof FamilyFigures

/** A figure with how far it is to be trusted and where it is from. */
export interface MarkedFigure<Value> {
  readonly value: Value
  readonly mark: Source['mark']
  readonly source: Source['id']
}

export interface LibraryFamily {
  readonly name: string
  readonly form: FamilyForm
  readonly description: string
  /** Met in old boxes and old stores; not put in today. */
  readonly isOldStock: boolean
  readonly figures: { readonly [Name in FigureName]: MarkedFigure<FamilyFigures[Name]> }
  readonly cautions: readonly Caution[]
}

const remembered = <Value>(value: Value, source: Source['id']): MarkedFigure<Value> => ({ value, mark: 'from memory', source })
const practice = <Value>(value: Value, source: Source['id']): MarkedFigure<Value> => ({
  value,
  mark: 'common practice, no source',
  source,
})

interface Limits {
  readonly temperature: readonly [lowest: number, highest: number, inSteam: number]
  readonly pressure: number
  readonly ph: readonly [lowest: number, highest: number]
}

const limits = ({ temperature: [lowest, highest, inSteam], pressure, ph: [acid, caustic] }: Limits) => ({
  lowestTemperature: remembered(celsius(lowest), 'SRC-600'),
  highestTemperature: remembered(celsius(highest), 'SRC-600'),
  highestSteamTemperature: remembered(celsius(inSteam), 'SRC-600'),
  highestPressure: remembered(bar(pressure), 'SRC-601'),
  lowestPh: remembered(ph(acid), 'SRC-602'),
  highestPh: remembered(ph(caustic), 'SRC-602'),
})

interface Behaviour {
  readonly consolidation: number
  readonly friction: number
  readonly stressFloor: MarkedFigure<Megapascal>
  readonly lifeInDays: number
}

const behaviour = ({ consolidation, friction, stressFloor, lifeInDays }: Behaviour) => ({
  consolidation: practice(ratio(consolidation), 'SRC-603'),
  friction: remembered(ratio(friction), 'SRC-604'),
  lateralRatio: practice(ratio(0.5), 'SRC-605'),
  stressFloor,
  usualLife: remembered(days(lifeInDays), 'SRC-608'),
})

const hardBraid = practice(megapascals(37.92), 'SRC-607')
const pressedRings = practice(megapascals(26.2), 'SRC-607')
const softer = (megapascal: number) => remembered(megapascals(megapascal), 'SRC-607')

/** v / (1 - v) with v = 0.46, as read for solid PTFE at 23 °C: what the braid of it does is not known better. */
const PTFE_LATERAL: MarkedFigure<Ratio> = { value: ratio(0.46 / (1 - 0.46)), mark: 'worked out', source: 'SRC-606' }

const mayBeAsbestos = ['dust', 'asbestos suspect'] as const
const graphite = ['corrodes stainless steel', 'oxidising fluids'] as const

/**
 * Kinds of packing by what they are made of, with broad figures. No maker's data: each figure is a default that a
 * site confirms or changes with the sheet of what it really buys.
 *
 * @source SRC-600 to SRC-608 figures, SRC-609 cautions (docs/sources.md)
 */
export const packingFamilies: readonly LibraryFamily[] = [
  {
    name: 'graphite die-formed',
    form: 'die-formed',
    description: 'Rings pressed from flexible graphite, between braided end rings that keep them in.',
    isOldStock: false,
    figures: {
      ...limits({ temperature: [-200, 450, 550], pressure: 250, ph: [0, 14] }),
      ...behaviour({ consolidation: 0.18, friction: 0.1, stressFloor: pressedRings, lifeInDays: 1825 }),
    },
    cautions: ['dust', ...graphite],
  },
  {
    name: 'graphite braid',
    form: 'braided',
    description: 'Cord braided from flexible graphite.',
    isOldStock: false,
    figures: {
      ...limits({ temperature: [-200, 450, 550], pressure: 150, ph: [0, 14] }),
      ...behaviour({ consolidation: 0.275, friction: 0.1, stressFloor: hardBraid, lifeInDays: 1095 }),
    },
    cautions: [...mayBeAsbestos, ...graphite],
  },
  {
    name: 'wire-reinforced graphite braid',
    form: 'braided',
    description: 'Graphite cord with fine metal wire in each yarn, for high pressure and as end rings.',
    isOldStock: false,
    figures: {
      ...limits({ temperature: [-200, 450, 550], pressure: 250, ph: [2, 14] }),
      ...behaviour({ consolidation: 0.25, friction: 0.13, stressFloor: hardBraid, lifeInDays: 1460 }),
    },
    cautions: [...mayBeAsbestos, ...graphite, 'wire scores stems'],
  },
  {
    name: 'carbon braid',
    form: 'braided',
    description: 'Cord braided from carbon yarn, mostly with graphite in it; firm, and used as end rings.',
    isOldStock: false,
    figures: {
      ...limits({ temperature: [-100, 350, 450], pressure: 150, ph: [1, 13] }),
      ...behaviour({ consolidation: 0.25, friction: 0.13, stressFloor: hardBraid, lifeInDays: 1095 }),
    },
    cautions: ['dust', ...graphite],
  },
  {
    name: 'PTFE braid',
    form: 'braided',
    description: 'Cord braided from PTFE yarn: clean and slippery, creeps when hot.',
    isOldStock: false,
    figures: {
      ...limits({ temperature: [-200, 260, 230], pressure: 100, ph: [0, 14] }),
      ...behaviour({ consolidation: 0.2, friction: 0.08, stressFloor: softer(20), lifeInDays: 1095 }),
      lateralRatio: PTFE_LATERAL,
    },
    cautions: [...mayBeAsbestos, 'no smoking or hot work'],
  },
  {
    name: 'aramid braid',
    form: 'braided',
    description: 'Cord of aramid yarn, tough against grit and fibre; hot water and steam weaken it.',
    isOldStock: false,
    figures: {
      ...limits({ temperature: [-100, 250, 150], pressure: 100, ph: [3, 11] }),
      ...behaviour({ consolidation: 0.25, friction: 0.15, stressFloor: softer(20), lifeInDays: 900 }),
    },
    cautions: ['dust', 'oxidising fluids', 'wears stems'],
  },
  {
    name: 'natural fibre braid',
    form: 'braided',
    description: 'Greased flax or hemp: cold water and little else.',
    isOldStock: false,
    figures: {
      ...limits({ temperature: [-20, 90, 90], pressure: 20, ph: [5, 10] }),
      ...behaviour({ consolidation: 0.3, friction: 0.2, stressFloor: softer(7), lifeInDays: 550 }),
    },
    cautions: [...mayBeAsbestos, 'oxidising fluids'],
  },
  {
    name: 'cotton braid',
    form: 'braided',
    description: 'Greased cotton: cold water, air and oil at low pressure.',
    isOldStock: false,
    figures: {
      ...limits({ temperature: [-20, 80, 80], pressure: 10, ph: [6, 9] }),
      ...behaviour({ consolidation: 0.3, friction: 0.2, stressFloor: softer(7), lifeInDays: 365 }),
    },
    cautions: [...mayBeAsbestos, 'oxidising fluids'],
  },
  {
    name: 'leather-cased',
    form: 'braided',
    description: 'A fibre core in a leather casing, for cold water and hydraulics; met in old boxes.',
    isOldStock: true,
    figures: {
      ...limits({ temperature: [-20, 60, 60], pressure: 40, ph: [5, 8] }),
      ...behaviour({ consolidation: 0.25, friction: 0.2, stressFloor: softer(7), lifeInDays: 550 }),
    },
    cautions: ['oxidising fluids'],
  },
  {
    name: 'lead-cased',
    form: 'braided',
    description: 'A fibre core in lead foil or wire, for steam and water of its day; met in old boxes.',
    isOldStock: true,
    figures: {
      ...limits({ temperature: [-20, 200, 200], pressure: 40, ph: [6, 9] }),
      ...behaviour({ consolidation: 0.2, friction: 0.2, stressFloor: softer(14), lifeInDays: 730 }),
    },
    cautions: ['lead', ...mayBeAsbestos],
  },
]
