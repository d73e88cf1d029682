import type { SettingValues } from '@glandkeeper/contract/settings'
import { airThroughOpening } from '@glandkeeper/engines/leak/air-orifice'
import { type Money, money } from '@glandkeeper/engines/leak/leak-quantity'
import { type KilogramCarbonDioxidePerKilogram, kilogramsCarbonDioxidePerKilogram } from '@glandkeeper/engines/leak/loss-sum'
import { barAbsolute, mm, ratio } from '@glandkeeper/units/quantity'
import type { Lost } from './measured.ts'

/** For a kilogram; null where the site has set nothing. */
export interface PricePerKilogram {
  readonly money: Money | null
  readonly carbon: KilogramCarbonDioxidePerKilogram | null
}

const KILOGRAMS_PER_TONNE = 1000
/** As drops are counted. */
const KILOGRAMS_PER_CUBIC_METRE_OF_WATER = 1000

/** What a kilogram of each costs and warms, by the settings of the site: nought is not set. */
export function pricesOf(settings: SettingValues): Readonly<Record<Lost, PricePerKilogram>> {
  const { steamPrice, waterPrice, airPrice, productPrice, carbonOfSteam, carbonOfProduct } = settings
  return {
    steam: { money: priced(steamPrice / KILOGRAMS_PER_TONNE), carbon: warming(carbonOfSteam / KILOGRAMS_PER_TONNE) },
    water: { money: priced(waterPrice / KILOGRAMS_PER_CUBIC_METRE_OF_WATER), carbon: null },
    air: { money: priced(airPrice / 1000 / freeAirDensity()), carbon: null },
    product: { money: priced(productPrice), carbon: warming(carbonOfProduct) },
  }
}

/** kg/m³ of free air, as the engine for air counts it: the opening does not matter. */
function freeAirDensity(): number {
  const found = airThroughOpening({ opening: { diameter: mm(1) }, pressure: barAbsolute(8), coefficient: ratio(1) })
  if (!found.ok) throw new Error(found.problem.detail)
  return found.mass / found.freeAir
}

function priced(perKilogram: number): Money | null {
  return perKilogram > 0 ? money(perKilogram) : null
}

function warming(perKilogram: number): KilogramCarbonDioxidePerKilogram | null {
  return perKilogram > 0 ? kilogramsCarbonDioxidePerKilogram(perKilogram) : null
}
