import type { ExpectedReading, Finding } from '@glandkeeper/contract/reserve'
import type { WearLife } from '@glandkeeper/engines/reserve/wear-lives'
import { surpriseOf } from '@glandkeeper/engines/wear/surprise'
import { runsOutOnStraightLine } from '@glandkeeper/engines/wear/straight-line'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'
import { instant, mm } from '@glandkeeper/units/quantity'
import type { ForecastMadeModel } from '../../generated/sqlite/models.ts'
import { newId } from '../../platform/ids.ts'
import { type ForecastBasis, groupOf, priorOf } from './forecast-basis.ts'
import type { glandRecord } from './state.ts'

type Record = ReturnType<typeof glandRecord>

/** What was forecast with an entry, as it is kept to be judged later; null where nothing could be. */
export function forecastMade({ ahead, state }: Record, eventId: string, madeAt: Date): ForecastMadeModel | null {
  const { forecast, lives } = ahead
  const present = lives.at(-1)
  if (forecast === null || present === undefined || state.reserveMm === null) return null
  const line = runsOutOnStraightLine(present.record.readings)
  return {
    id: newId(),
    siteId: state.siteId,
    valveId: state.valveId,
    eventId,
    madeAt,
    countedFrom: new Date(forecast.countedFrom),
    groupName: forecast.group,
    readingsUsed: forecast.readingsUsed,
    reserveMm: state.reserveMm,
    dates: JSON.stringify(forecast.dates),
    straightLineAt: line.ok ? new Date(Math.round(line.runsOutAt)) : null,
  }
}

/** A new reading far off what the readings before it make likely is kept, and asked for again. */
export function surpriseFindings({ history, ahead }: Record, factId: string, basis: ForecastBasis): Finding[] {
  const moment = history.moments.find((candidate) => candidate.factId === factId)
  const present = ahead.lives.at(-1)
  const reading = present?.record.readings.at(-1)
  if (moment?.kind !== 'reading.taken' || !present || !reading || reading.at !== moment.at || ahead.forecast === null) return []
  const before = { ...present.record, readings: present.record.readings.slice(0, -1) }
  const found = surpriseOf({
    life: before,
    prior: priorOf(basis, ahead.forecast.group),
    earlierLives: ahead.lives.slice(0, -1).map(({ record }) => record),
    reading,
  })
  if (!found.ok || !found.asksForSecondReading) return []
  const detail = `reserve of ${millimetres(reading.reserve)} where about ${millimetres(found.expected)} was to be expected: read both gaps again`
  return [{ code: 'forecast/unexpected-reading', detail }]
}

/** What a reading at this moment is likely to show; null where nothing has been read. */
export function expectedNow(
  service: string,
  lives: readonly WearLife[],
  basis: ForecastBasis,
  now: Date,
): ExpectedReading | null {
  const present = lives.at(-1)
  if (!present) return null
  const found = surpriseOf({
    life: present.record,
    prior: priorOf(basis, groupOf(service, present.family)),
    earlierLives: lives.slice(0, -1).map(({ record }) => record),
    reading: { at: instant(now.getTime()), reserve: mm(0) },
  })
  if (!found.ok) return null
  return { reserve: found.expected, deviation: found.deviation }
}
