import type { LeakRateRow } from '@glandkeeper/contract/leak-study'
import { DAYS_PER_MONTH, leakRate } from '@glandkeeper/engines/leak/leak-exposure'
import { days } from '@glandkeeper/units/quantity'
import type { z } from 'zod'
import { nothingWatched, together, type Watched } from './watched-pieces.ts'

export type RateRow = z.input<typeof LeakRateRow>
export type RateFigures = Omit<RateRow, 'name' | 'nipsPerDryMonth'>

/** What was watched, summed over the valves that were. */
export interface WatchedValves extends Watched {
  readonly valves: number
}

/** Leaks and the time watched, by name: of a service, a packing, an area, an age. */
export class RateTable {
  readonly #rows = new Map<string, WatchedValves>()

  /** @param own of one valve: it counts once under each name */
  add(name: string, own: Watched): void {
    const before = this.#rows.get(name) ?? { ...nothingWatched, valves: 0 }
    this.#rows.set(name, { ...together(before, own), valves: before.valves + 1 })
  }

  /** In the given order of names; without one the most leaks first. */
  rows(names?: readonly string[]): RateRow[] {
    const inOrder = names ? names.filter((name) => this.#rows.has(name)) : [...this.#rows.keys()].toSorted(this.#mostFirst)
    return inOrder.map((name) => this.row(name))
  }

  row(name: string): RateRow {
    const sums = this.#rows.get(name) ?? { ...nothingWatched, valves: 0 }
    const daysDry = sums.days - sums.daysLeaking
    const nipsPerDryMonth = daysDry < 1 ? null : rounded((sums.nips * DAYS_PER_MONTH) / daysDry, 3)
    return { name, ...rateFigures(sums), nipsPerDryMonth }
  }

  readonly #mostFirst = (one: string, other: string): number => {
    const leaksOf = (name: string) => this.#rows.get(name)?.leaks ?? 0
    return leaksOf(other) - leaksOf(one) || (one < other ? -1 : 1)
  }
}

/** No rate over less than a day. */
export function rateFigures({ valves, days: watched, leaks }: WatchedValves): RateFigures {
  const found = watched < 1 ? null : leakRate({ leaks, days: days(watched) })
  const figures = found?.ok ? found : null
  const orNull = (value: number | undefined) => (value === undefined ? null : rounded(value, 3))
  return {
    valves,
    months: rounded(watched / DAYS_PER_MONTH, 2),
    leaks,
    rate: orNull(figures?.rate),
    lower: orNull(figures?.lower),
    upper: orNull(figures?.upper),
  }
}

/** So that what is kept is short: nobody reads more digits. */
export function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits))
}
