import type { LeakStudy } from '@glandkeeper/contract/leak-study'
import { ageBands } from '@glandkeeper/engines/leak/exposure-by-age'
import type { Instant } from '@glandkeeper/units/quantity'
import type { z } from 'zod'
import { type OverOutage, OutageSums } from './outage-sums.ts'
import { PackingChangeSums } from './packing-changes.ts'
import { RateTable } from './rate-table.ts'
import type { WatchedGland } from './watched-gland.ts'
import { nothingWatched, summedBy, together, watchedPieces } from './watched-pieces.ts'

type Study = z.input<typeof LeakStudy>
/** What a study says of one of its periods. */
export type PeriodFigures = Pick<
  Study,
  'overall' | 'byService' | 'byFamily' | 'byArea' | 'byAge' | 'afterOutages' | 'packingChanges'
>

const ALL = 'all'

/** Sums over the glands of a site since a moment: a few numbers a gland, whatever its history. */
export class PeriodSums {
  readonly #since: Instant
  readonly #overall = new RateTable()
  readonly #services = new RateTable()
  readonly #families = new RateTable()
  readonly #areas = new RateTable()
  readonly #ages = new RateTable()
  readonly #outages: OutageSums
  readonly #changes: PackingChangeSums

  constructor(since: Instant, outages: readonly OverOutage[]) {
    this.#since = since
    this.#outages = new OutageSums(outages, since)
    this.#changes = new PackingChangeSums(since)
  }

  add(gland: WatchedGland): void {
    const pieces = watchedPieces(gland, this.#since)
    if (pieces.length === 0) return
    const whole = pieces.reduce<typeof nothingWatched>(together, nothingWatched)
    this.#overall.add(ALL, whole)
    this.#services.add(gland.service, whole)
    this.#areas.add(gland.areaCode, whole)
    for (const [family, own] of summedBy(pieces, (piece) => piece.family)) this.#families.add(family, own)
    for (const [band, own] of summedBy(pieces, (piece) => piece.band)) this.#ages.add(band, own)
    this.#outages.add(gland)
    this.#changes.add(
      gland.tag,
      gland.history.lives,
      summedBy(pieces, ({ packing }) => packing),
    )
  }

  figures(): PeriodFigures {
    return {
      overall: this.#overall.row(ALL),
      byService: this.#services.rows(),
      byFamily: this.#families.rows(),
      byArea: this.#areas.rows(),
      byAge: this.#ages.rows(ageBands.map(({ band }) => band)),
      afterOutages: this.#outages.figures(),
      packingChanges: this.#changes.figures(),
    }
  }
}
