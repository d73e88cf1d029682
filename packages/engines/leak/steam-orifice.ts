import { MILLIMETRES_PER_INCH, psiToBar } from '@glandkeeper/units/convert'
import {
  type BarAbsolute,
  barAbsolute,
  type KilogramPerHour,
  kilogramsPerHour,
  type Ratio,
  ratio,
} from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome, refuse } from '../outcome.ts'
import { areaOfOpening, type Opening } from './opening.ts'

const KILOGRAMS_PER_POUND = 0.45359237
/** Turns lb/h for in² and psi absolute into kg/h for mm² and bar absolute. */
const METRIC = KILOGRAMS_PER_POUND / (MILLIMETRES_PER_INCH ** 2 * psiToBar(1))
/** Napier: pounds an hour for a square inch and a pound per square inch absolute. */
const NAPIER = 51.43 * METRIC
/** 24.24 is for the square of the diameter; this one is for the area. */
const FORM_24_24 = ((24.24 * 4) / Math.PI) * METRIC
/** Downstream over upstream, both absolute: at or above it the flow is no longer critical and all three methods give too much. */
const CRITICAL_RATIO = 0.58
const ATMOSPHERE = barAbsolute(1.01325)
/** Above the critical point there is no saturated steam. */
const CRITICAL_BAR = 220.64

export type SteamMethod = 'Napier' | '24.24 form' | 'discharge 0.73'

export interface SteamThroughOpening {
  readonly method: SteamMethod
  readonly flow: KilogramPerHour
  /** Share of what Napier gives. */
  readonly coefficient: Ratio
  readonly validity: string
}

interface SteamInput {
  readonly opening: Opening
  /** Before the opening. */
  readonly pressure: BarAbsolute
  /** Behind the opening; the atmosphere when not given. */
  readonly downstreamPressure?: BarAbsolute
}

const bounds = `dry saturated steam, critical flow: pressure behind below ${CRITICAL_RATIO} of the pressure before, both absolute`
const methods: Readonly<
  Record<SteamMethod, { readonly perAreaAndPressure: number; readonly coefficient: Ratio; readonly validity: string }>
> = {
  Napier: { perAreaAndPressure: NAPIER, coefficient: ratio(1), validity: `${bounds}; an ideal nozzle, so the most of the three` },
  '24.24 form': { perAreaAndPressure: FORM_24_24, coefficient: ratio(0.6), validity: `${bounds}; a sharp-edged hole` },
  'discharge 0.73': {
    perAreaAndPressure: 0.73 * NAPIER,
    coefficient: ratio(0.73),
    validity: `${bounds}; the coefficient a public table of trap orifices implies, 15 to 300 psi above atmosphere`,
  },
}

/**
 * Steam blowing through an opening, by a method of your choice: they differ by two thirds, so the figure carries its name.
 *
 *     flow = k area pressure        kg/h, mm², bar absolute
 *     k = 0.52444 (Napier, 51.43 in lb/h, in², psi) · 24.24 form: 24.24 diameter² pressure (0.60 of Napier) · 0.73 of Napier
 *
 * Holds for dry saturated steam and critical flow only. It does not know wet steam, hot water that flashes, or superheat.
 *
 * @source SRC-504 Napier · SRC-505 24.24 form · SRC-506 0.73 implied by a public table · SRC-507 critical ratio (docs/sources.md)
 * @returns kg/h with the method's name, coefficient and validity; or `leak/not-critical`, `leak/no-saturated-steam`, `number/…`
 * @example steamThroughOpening({ method: 'Napier', opening: { area: mm2(10) }, pressure: barAbsolute(8) }).flow // → 41.955203867
 */
export function steamThroughOpening(input: SteamInput & { readonly method: SteamMethod }): Outcome<SteamThroughOpening> {
  const { method, opening, pressure, downstreamPressure = ATMOSPHERE } = input
  const area = areaOfOpening(opening)
  if (!area.ok) return area
  const refused = firstNotPositive({ pressure }) ?? notCritical(pressure, downstreamPressure)
  if (refused) return refused
  if (pressure > CRITICAL_BAR) {
    return refuse(
      'leak/no-saturated-steam',
      'pressure',
      `there is no saturated steam above ${CRITICAL_BAR} bar absolute, not at ${pressure}`,
    )
  }
  const { perAreaAndPressure, coefficient, validity } = methods[method]
  const flow = perAreaAndPressure * area.area * pressure
  if (!Number.isFinite(flow))
    return refuse('number/out-of-range', 'pressure', 'the opening and the pressure are too large to compute with')
  return { ok: true, method, flow: kilogramsPerHour(flow), coefficient, validity }
}

/**
 * The three methods side by side, the most first: between them lies what nobody measured.
 *
 * @source SRC-504 SRC-505 SRC-506 as above (docs/sources.md)
 * @returns three figures, or the problem of the first
 * @example steamByEachMethod({ opening: { area: mm2(10) }, pressure: barAbsolute(8) }).figures.length // → 3
 */
export function steamByEachMethod(input: SteamInput): Outcome<{ readonly figures: readonly SteamThroughOpening[] }> {
  const figures: SteamThroughOpening[] = []
  for (const method of ['Napier', 'discharge 0.73', '24.24 form'] as const) {
    const found = steamThroughOpening({ ...input, method })
    if (!found.ok) return found
    figures.push({ method, flow: found.flow, coefficient: found.coefficient, validity: found.validity })
  }
  return { ok: true, figures }
}

/** A figure above critical would be too much by an unknown share, and money would be made of it: refused rather than flagged. */
function notCritical(pressure: BarAbsolute, downstreamPressure: BarAbsolute) {
  if (!(downstreamPressure >= 0 && downstreamPressure < Infinity)) {
    return refuse('number/negative', 'downstreamPressure', `an absolute pressure is 0 or more, not ${downstreamPressure}`)
  }
  if (downstreamPressure / pressure < CRITICAL_RATIO) return null
  const least = (downstreamPressure / CRITICAL_RATIO).toFixed(3)
  return refuse(
    'leak/not-critical',
    'pressure',
    `against ${downstreamPressure} bar absolute these methods hold above ${least} bar absolute, not at ${pressure}`,
  )
}
