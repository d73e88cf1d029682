import { type LitrePerDay, litresPerDay, type Millilitre, millilitres } from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome, refuse } from '../outcome.ts'
import { type CubicMetrePerYear, cubicMetresPerYear, type LitrePerYear, litresPerYear } from './leak-quantity.ts'

const MINUTES_PER_DAY = 1440
const DAYS_PER_YEAR = 365

/**
 * Volumes of one drop as published. They differ nearly sevenfold, so a figure made from drops says which it took.
 *
 * @source SRC-501 a quarter and a third of a millilitre · SRC-502 a twentieth (docs/sources.md)
 */
export const dropVolumes: readonly { readonly name: DropName; readonly volume: Millilitre }[] = [
  { name: 'quarter of a millilitre', volume: millilitres(0.25) },
  { name: 'third of a millilitre', volume: millilitres(1 / 3) },
  { name: 'twentieth of a millilitre', volume: millilitres(0.05) },
]

/** `as set` is a volume the plant measured itself. */
export type DropName = 'quarter of a millilitre' | 'third of a millilitre' | 'twentieth of a millilitre' | 'as set'

/**
 * What counted drops come to.
 *
 *     litres a day = drops a minute * 1,440 * mL per drop / 1,000
 *
 * Holds for drops that can be counted. A stream is not known here, nor drops that dry on the gland. A year is 365 days.
 *
 * @source SRC-501 SRC-502 volumes of a drop · SRC-503 drops to litres (docs/sources.md)
 * @returns litres a day and a year, and the name of the drop; or `number/negative`, `number/not-positive`
 * @example litresOfDrops({ dropsPerMinute: 60, dropVolume: millilitres(0.25) }).perDay // → 21.6
 */
export function litresOfDrops(input: { readonly dropsPerMinute: number; readonly dropVolume: Millilitre }): Outcome<{
  readonly drop: DropName
  readonly perDay: LitrePerDay
  readonly perYear: LitrePerYear
  readonly cubicMetresPerYear: CubicMetrePerYear
}> {
  const { dropsPerMinute, dropVolume } = input
  if (!(dropsPerMinute >= 0))
    return refuse('number/negative', 'dropsPerMinute', `drops must be counted, 0 or more, not ${dropsPerMinute}`)
  const refused = firstNotPositive({ dropVolume })
  if (refused) return refused
  const perDay = (dropsPerMinute * MINUTES_PER_DAY * dropVolume) / 1000
  const perYear = perDay * DAYS_PER_YEAR
  if (!Number.isFinite(perYear)) return refuse('number/out-of-range', 'dropsPerMinute', 'the drops are too many to compute with')
  return {
    ok: true,
    drop: dropVolumes.find((known) => known.volume === dropVolume)?.name ?? 'as set',
    perDay: litresPerDay(perDay),
    perYear: litresPerYear(perYear),
    cubicMetresPerYear: cubicMetresPerYear(perYear / 1000),
  }
}
