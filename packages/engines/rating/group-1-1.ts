import { type Bar, bar, type Celsius, type Ratio, ratio } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { groupOneOne, type PressureClass, pressureClasses } from './group-1-1-table.ts'

const LOWEST_CELSIUS = -29
/** Above it graphite forms in this steel with time. */
const LONG_USE_CELSIUS = 425
const NO_APPROVAL = 'A table value approves nothing: the valve plate, the design code and qualified persons decide.'

/**
 * Compares a pressure with the rating of carbon steel group 1.1 at this temperature. A warning only: it approves nothing.
 *
 *     allowed = straight line between the rows below and above; the 38 °C row from -29 to 38 °C
 *     share = pressure / allowed
 *
 * Holds for group 1.1 (WCB castings, A105 forgings) and flanged ends. It knows nothing of trim, seats, packing or age.
 *
 * @source SRC-570 table · SRC-571 straight line, lower limit · SRC-572 long use above 425 °C (docs/sources.md)
 * @returns allowed pressure, share, whether exceeded, a sentence, cautions; or `rating/outside-range`, `rating/no-such-class`
 * @example ratingWarning({ pressureClass: 300, temperature: celsius(225), pressure: bar(15) }).allowedPressure // → 42.85
 */
export function ratingWarning(input: {
  readonly pressureClass: PressureClass
  readonly temperature: Celsius
  readonly pressure: Bar
}): Outcome<{
  readonly allowedPressure: Bar
  readonly share: Ratio
  readonly exceeded: boolean
  readonly warning: string
  readonly cautions: readonly string[]
}> {
  const { pressureClass, temperature, pressure } = input
  const column = pressureClasses.indexOf(pressureClass)
  if (column === -1)
    return refuse(
      'rating/no-such-class',
      'pressureClass',
      `the table has class ${pressureClasses.join(', ')}, not ${pressureClass}`,
    )
  if (!(pressure >= 0 && pressure < Infinity)) {
    return refuse('rating/outside-range', 'pressure', `the table is for 0 bar above atmosphere or more, not ${pressure}`)
  }
  const allowed = allowedAt(temperature, column)
  if (allowed === null) {
    const last = groupOneOne.at(-1)?.[0]
    return refuse(
      'rating/outside-range',
      'temperature',
      `the table goes from ${LOWEST_CELSIUS} to ${last} °C, not to ${temperature} °C`,
    )
  }
  const share = pressure / allowed
  if (!Number.isFinite(share)) return refuse('number/out-of-range', 'pressure', 'the pressure is too large to compute with')
  const exceeded = pressure > allowed
  // Rounded down, so that the sentence never promises more than the table; the dust lets 13.8 stay 13.8.
  const printed = (Math.floor(allowed * 10 + 1e-6) / 10).toFixed(1)
  const table = `the ${printed} bar the table gives for class ${pressureClass}, group 1.1, at ${temperature} °C`
  return {
    ok: true,
    allowedPressure: bar(allowed),
    share: ratio(share),
    exceeded,
    warning: `${pressure} bar is ${exceeded ? 'above' : `${Math.round(share * 100)} % of`} ${table}. ${NO_APPROVAL}`,
    cautions:
      temperature > LONG_USE_CELSIUS
        ? [`Long use of this steel above ${LONG_USE_CELSIUS} °C is not advised: graphite forms in it (from memory).`]
        : [],
  }
}

/** Bar above atmosphere, or null where the table says nothing. */
function allowedAt(temperature: Celsius, column: number): number | null {
  if (!(temperature >= LOWEST_CELSIUS)) return null
  const next = groupOneOne.findIndex(([rowTemperature]) => temperature <= rowTemperature)
  const above = groupOneOne[next]
  if (above === undefined) return null
  const allowedAbove = above[column + 1] ?? 0
  const below = groupOneOne[next - 1]
  if (below === undefined) return allowedAbove
  const allowedBelow = below[column + 1] ?? 0
  const way = (temperature - below[0]) / (above[0] - below[0])
  return allowedBelow + way * (allowedAbove - allowedBelow)
}
