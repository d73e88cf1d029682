import type { LeakLoss } from '@glandkeeper/contract/leak-losses'
import { type HourPerYear, money } from '@glandkeeper/engines/leak/leak-quantity'
import type { LossRange } from '@glandkeeper/engines/leak/loss'
import { kilogramsCarbonDioxidePerKilogram, type SumOfLosses, sumOfLosses } from '@glandkeeper/engines/leak/loss-sum'
import { kilogramsPerHour } from '@glandkeeper/units/quantity'
import type { PricePerKilogram } from './prices.ts'

/** One leak with what its kilograms cost. */
export interface PricedLoss {
  readonly range: LossRange
  readonly price: PricePerKilogram
}

type Sum = Pick<LeakLoss, 'kilogramsPerHour' | 'moneyPerYear' | 'carbonPerYear'>

/** What leaks lose together; money and carbon of those that have a price or factor, null where none has. */
export function sumOf(losses: readonly PricedLoss[], hours: HourPerYear): Sum {
  const all = summed(
    losses.map(({ range }) => range),
    hours,
  )
  const paid = worth(losses, ({ money: each }) => each)
  const warming = worth(losses, ({ carbon }) => carbon)
  return {
    kilogramsPerHour: all.kgPerHour,
    moneyPerYear: paid.length === 0 ? null : summed(paid, hours).money,
    carbonPerYear: warming.length === 0 ? null : summed(warming, hours).carbon,
  }
}

/** Prices differ, and errors stay independent: a kilogram worth three is three worth one. */
function worth(losses: readonly PricedLoss[], of: (price: PricePerKilogram) => number | null): LossRange[] {
  return losses.flatMap(({ range, price }) => {
    const each = of(price)
    if (each === null) return []
    const times = (value: number) => kilogramsPerHour(value * each)
    return [{ middle: times(range.middle), low: times(range.low), high: times(range.high) }]
  })
}

function summed(ranges: readonly LossRange[], hours: HourPerYear): SumOfLosses {
  const one = { pricePerKilogram: money(1), carbonPerKilogram: kilogramsCarbonDioxidePerKilogram(1) }
  const sum = sumOfLosses(ranges, { hours, ...one })
  if (!sum.ok) throw new Error(sum.problem.detail)
  return sum
}
