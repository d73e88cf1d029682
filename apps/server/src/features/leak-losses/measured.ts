import type { SettingValues } from '@glandkeeper/contract/settings'
import { airCoefficients } from '@glandkeeper/engines/leak/air-orifice'
import { kilogramsPerCubicMetre } from '@glandkeeper/engines/leak/leak-quantity'
import type { LeakMeasured } from '@glandkeeper/engines/leak/loss'
import type { Screening } from '@glandkeeper/engines/leak/screening'
import { saturationTemperature } from '@glandkeeper/engines/steam/saturation'
import { absolute, type Bar, bar, type Millimetre, mm } from '@glandkeeper/units/quantity'
import { netScreening } from '../glands/index.ts'
import type { StandingSighting } from '../leak-rules/index.ts'
import type { OpenLeak } from './open-leaks.ts'

/** What is lost, by what it is priced as. */
export type Lost = 'steam' | 'water' | 'air' | 'product'

export interface Measured {
  readonly measured: LeakMeasured
  readonly lost: Lost
  /** What the method does not know of this valve; null where it knows all. */
  readonly care: string | null
}

type Valve = OpenLeak['valve']
type Said = StandingSighting['said']

/** A litre of water weighs a kilogram: drops are not counted more closely than that. */
const WATER = kilogramsPerCubicMetre(1000)
/** Boils there in the open: above it, part of what comes out flashes. */
const BOILS_IN_THE_OPEN_C = 100
/** Steam so little above its boiling point is taken for dry saturated steam. Set by us. */
const SUPERHEAT_THAT_COUNTS_C = 10

/** The figure of a sighting in the terms of the engines: a meter before drops, drops before an opening judged by eye. */
export function measuredOf({ valve, correlation, sighting }: OpenLeak, settings: SettingValues): Measured | null {
  if (sighting === null) return null
  const { said } = sighting
  const { dropsPerMinute = 0, opening = 0 } = said
  const screening = screeningOf(said)
  if (screening) {
    const { errorOfScreening: meterError } = settings
    return {
      measured: { by: 'screening', service: correlation, screening, meterError },
      lost: 'product',
      care: careOfMeter(said),
    }
  }
  if (dropsPerMinute > 0) {
    const { dropVolume, errorOfDrops: countError } = settings
    return {
      measured: { by: 'drops', dropsPerMinute, dropVolume, density: WATER, countError },
      lost: lostOf(valve),
      care: isWater(valve) ? null : `counted as water, 1 kg a litre: ${fluidOf(valve)} may be heavier or lighter`,
    }
  }
  if (valve.pressureBar === null || opening === 0) return null
  return throughOpening(valve, { gauge: bar(valve.pressureBar), diameter: mm(opening) }, settings)
}

/** Of a meter that stopped at an end nobody published a factor for, the published end below it. */
function screeningOf(said: Said): Screening | null {
  const net = netScreening(said)
  if (net === null) return null
  if (said.isPegged === true && net >= 10_000) return { peggedAt: net >= 100_000 ? 100_000 : 10_000 }
  return { screeningValue: net }
}

function careOfMeter({ screeningValue, isPegged }: Said): string | null {
  const isPublishedEnd = screeningValue === 10_000 || screeningValue === 100_000
  return isPegged === true && !isPublishedEnd ? `the meter stood at its end, ${screeningValue} ppmv: it is more` : null
}

function throughOpening(
  valve: Valve,
  { gauge, diameter }: { readonly gauge: Bar; readonly diameter: Millimetre },
  settings: SettingValues,
): Measured {
  const { errorOfOpening: diameterError } = settings
  const through = { opening: { diameter }, diameterError }
  const lost = lostOf(valve)
  if (valve.phase === 'steam') {
    const measured = { by: 'steam', steamMethod: 'Napier', pressure: absolute(gauge), ...through } as const
    return { measured, lost, care: careOfSteam(valve, gauge) }
  }
  if (valve.phase === 'gas') {
    const measured = { by: 'air', pressure: absolute(gauge), coefficient: airCoefficients['sharp edged'], ...through } as const
    return { measured, lost, care: lost === 'air' ? null : `counted as air: ${fluidOf(valve)} may be heavier or lighter` }
  }
  return { measured: { by: 'water', pressureDrop: gauge, ...through }, lost, care: careOfWater(valve) }
}

function careOfSteam({ temperatureC }: Valve, gauge: Bar): string | null {
  const boils = saturationTemperature(absolute(gauge))
  const isSuperheated = boils.ok && temperatureC !== null && temperatureC > boils.temperature + SUPERHEAT_THAT_COUNTS_C
  return isSuperheated ? 'counted as dry saturated steam: superheated, less of it passes' : null
}

function careOfWater(valve: Valve): string | null {
  if (!isWater(valve)) return `counted as water: ${fluidOf(valve)} may pass more or less`
  const flashes = valve.temperatureC !== null && valve.temperatureC > BOILS_IN_THE_OPEN_C
  return flashes ? 'counted as cold water: part of it flashes on the way out, and less passes' : null
}

function lostOf(valve: Valve): Lost {
  if (valve.phase === 'steam') return 'steam'
  if (valve.phase !== 'gas') return 'water'
  return /\bair\b/i.test(`${valve.service} ${valve.fluid}`) ? 'air' : 'product'
}

function isWater(valve: Valve): boolean {
  return valve.phase === 'steam' || /\b(water|condensate)\b/i.test(`${valve.service} ${valve.fluid}`)
}

function fluidOf({ fluid, service }: Valve): string {
  return fluid || service
}
