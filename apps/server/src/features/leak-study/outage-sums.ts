import type { LeakStudy } from '@glandkeeper/contract/leak-study'
import { leaksAfterOutage, timeAfterOutages } from '@glandkeeper/engines/leak/after-outage'
import { exactShareLimits } from '@glandkeeper/engines/stats/binomial'
import { addDays, days, daysBetween, type Instant, instant } from '@glandkeeper/units/quantity'
import type { z } from 'zod'
import { startOfDayAt } from '../../platform/clock.ts'
import { daysAfter } from '../../platform/local-time.ts'
import type { Read } from '../../platform/store.ts'
import { rounded } from './rate-table.ts'
import type { WatchedGland } from './watched-gland.ts'

type AfterOutages = z.input<typeof LeakStudy>['afterOutages']

/** An outage that is over, by the calendar of its site. */
export interface OverOutage {
  readonly outageId: string
  readonly name: string
  readonly endedOn: string
  /** The first moment after its last day. */
  readonly endsAt: Instant
  /** Areas that were down; none means the whole site. */
  readonly areaCodes: readonly string[]
}

/** A leak so soon after an outage says something of it. Set by us. */
export const DAYS_AFTER_OUTAGE = 30
const WINDOW = days(DAYS_AFTER_OUTAGE)

/** The newest first. */
export async function outagesOver(read: Pick<Read, 'outage'>, siteId: string, timeZone: string): Promise<OverOutage[]> {
  const rows = await read.outage.findMany({ where: { siteId, state: 'over' }, orderBy: [{ endedOn: 'desc' }, { id: 'asc' }] })
  return rows.flatMap(({ id, name, endedOn, areaCodes }) => {
    if (endedOn === null) return []
    const endsAt = instant(startOfDayAt(daysAfter(endedOn, 1), timeZone).getTime())
    return [{ outageId: id, name, endedOn, endsAt, areaCodes: JSON.parse(areaCodes) as string[] }]
  })
}

/** Leaks that opened in the days after an outage of their area, against the share of all watched time that lies there. */
export class OutageSums {
  readonly #outages: readonly OverOutage[]
  readonly #since: Instant
  readonly #openedIn = new Map<string, Instant[]>()
  #daysWatched = 0
  #daysAfter = 0

  constructor(outages: readonly OverOutage[], since: Instant) {
    this.#outages = outages
    this.#since = since
  }

  add({ areaCode, leaks, from: begins, to }: WatchedGland): void {
    const from = begins > this.#since ? begins : this.#since
    if (!(to > from)) return
    const watched = daysBetween(from, to)
    const after = timeAfterOutages({ outageEnds: this.#endsIn(areaCode), days: WINDOW, from, to })
    this.#daysWatched += watched
    if (after.ok) this.#daysAfter += after.share * watched
    const opened = this.#openedIn.get(areaCode) ?? []
    for (const { openedAt } of leaks) if (openedAt >= from && openedAt < to) opened.push(openedAt)
    this.#openedIn.set(areaCode, opened)
  }

  figures(): AfterOutages {
    const leaks = [...this.#openedIn.values()].reduce((sum, opened) => sum + opened.length, 0)
    const within = [...this.#openedIn].reduce((sum, [areaCode, opened]) => {
      const leaksThere = opened.map((openedAt) => ({ openedAt }))
      const found = leaksAfterOutage({ leaks: leaksThere, outageEnds: this.#endsIn(areaCode), days: WINDOW })
      return found.ok ? sum + found.within : sum
    }, 0)
    const outages = this.#outages
      .filter(({ endsAt }) => endsAt >= this.#since)
      .map((outage) => ({
        outageId: outage.outageId,
        name: outage.name,
        endedOn: outage.endedOn,
        leaks: this.#leaksAfter(outage),
      }))
    // After no outage at all, a share of none says nothing.
    if (this.#outages.length === 0) return { leaks, within, share: null, lower: null, upper: null, timeShare: null, outages }
    const timeShare = this.#daysWatched > 0 ? rounded(Math.min(1, this.#daysAfter / this.#daysWatched), 5) : null
    return { leaks, within, ...shareOf(within, leaks), timeShare, outages }
  }

  #endsIn(areaCode: string): Instant[] {
    return this.#outages.filter((outage) => wasDown(outage, areaCode)).map(({ endsAt }) => endsAt)
  }

  #leaksAfter(outage: OverOutage): number {
    const until = addDays(outage.endsAt, WINDOW)
    return [...this.#openedIn]
      .filter(([areaCode]) => wasDown(outage, areaCode))
      .flatMap(([, opened]) => opened.filter((at) => at >= outage.endsAt && at < until)).length
  }
}

function wasDown({ areaCodes }: OverOutage, areaCode: string): boolean {
  return areaCodes.length === 0 || areaCodes.includes(areaCode)
}

function shareOf(within: number, leaks: number): Pick<AfterOutages, 'share' | 'lower' | 'upper'> {
  const limits = exactShareLimits({ found: within, lookedAt: leaks, confidence: 0.95 })
  if (!limits.ok) return { share: null, lower: null, upper: null }
  const { share, lower, upper } = limits
  return { share: rounded(share, 5), lower: rounded(lower, 5), upper: rounded(upper, 5) }
}
