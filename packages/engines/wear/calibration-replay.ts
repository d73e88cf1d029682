import type { Instant, Ratio } from '@glandkeeper/units/quantity'
import { type ForecastWithOutcome, type LifeOutcome, spanOfReadings } from './calibration-place.ts'
import { forecastReserve, type RunOutDate } from './forecast.ts'
import type { LifeRecord } from './life.ts'
import type { GroupPrior } from './prior.ts'
import { runsOutOnStraightLine } from './straight-line.ts'

/**
 * What the model would have said of a life when it had its first reading, its second, third, fourth, sixth and tenth:
 * each time with nothing of that life but what had been entered by then.
 *
 * The prior is the one given: where it was learned from this life too, the forecasts know a little of what was to come.
 *
 * @source SRC-713 forecasts made again from the readings of their time (docs/sources.md)
 * @returns one forecast for each span of readings reached while the reserve lasted; none where nothing can be forecast
 * @example replayLife({ life: { readings: [], nips: [], repackedAt: null, step: mm(0.875) }, prior: defaultPrior, earlierLives: [], chances: [], name: 'A', group: 'G', outcome: { ranOut: false, at: instant(0) } }) // → []
 */
export function replayLife(input: {
  readonly life: LifeRecord
  readonly prior: GroupPrior
  readonly earlierLives: readonly LifeRecord[]
  readonly chances: readonly Ratio[]
  readonly name: string
  readonly group: string
  readonly outcome: LifeOutcome
}): ForecastWithOutcome[] {
  const { life, prior, earlierLives, chances, name, group, outcome } = input
  const readings = life.readings.filter(({ at }) => at < outcome.at).toSorted((one, other) => one.at - other.at)
  const made = new Map<string, ForecastWithOutcome>()
  for (let count = 1; count <= readings.length; count += 1) {
    // Screening may leave readings out, so a span is reached by so many readings at the soonest.
    if (made.has(spanOfReadings(count))) continue
    const then = readings[count - 1]!.at
    const known = readings.slice(0, count)
    const asThen: LifeRecord = { ...life, readings: known, nips: life.nips.filter(({ at }) => at <= then) }
    const found = forecastReserve({ life: asThen, prior, earlierLives, chances, before: [] })
    if (!found.ok) continue
    const span = spanOfReadings(found.readingsUsed)
    if (made.has(span)) continue
    const line = runsOutOnStraightLine(known)
    made.set(span, {
      life: name,
      group,
      readingsUsed: found.readingsUsed,
      countedFrom: found.countedFrom,
      dates: found.dates.map(({ runsOut }) => momentOf(runsOut, found.countedFrom)),
      straightLineAt: line.ok ? line.runsOutAt : null,
      outcome,
    })
  }
  return [...made.values()]
}

function momentOf(runsOut: RunOutDate, countedFrom: Instant): Instant | null {
  if (runsOut.state === 'beyond 20 years') return null
  return runsOut.state === 'used up' ? countedFrom : runsOut.at
}
