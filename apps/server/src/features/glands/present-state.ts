import { TZDate } from '@date-fns/tz'
import type { GlandState } from '@glandkeeper/contract/reserve'
import type { SettingValues } from '@glandkeeper/contract/settings'
import type { ReserveFinding } from '@glandkeeper/engines/reserve/findings'
import { type Standing, type StandingBands, standingOf } from '@glandkeeper/engines/reserve/standing'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'
import { mm, ratio } from '@glandkeeper/units/quantity'
import { format } from 'date-fns'
import type { ValveStateModel } from '../../generated/sqlite/models.ts'
import { dayAt } from '../../platform/clock.ts'
import { findingsInWords } from './findings-in-words.ts'
import { forecastSentence, presentForecast, presentLook } from './forecast-in-words.ts'
import type { KeptForecast, KeptLook } from './forecast-of-gland.ts'

export interface AsOf {
  readonly timeZone: string
  readonly bands: StandingBands
}

/** The site's own bands of standing. */
export function bandsOf({ bookReserve, bookChance, watchReserve, watchChance }: SettingValues): StandingBands {
  return { book: { reserve: bookReserve, chance: bookChance }, watch: { reserve: watchReserve, chance: watchChance } }
}

/** A state row in the terms of the contract, with the word it stands at and the sentence that says why. */
export function presentState(row: ValveStateModel, asOf: AsOf): GlandState {
  const { timeZone } = asOf
  const standing = standingOfRow(row, asOf.bands)
  const findings = findingsInWords(JSON.parse(row.findings) as ReserveFinding[])
  const forecast =
    row.forecast === null || row.stopAt === null
      ? null
      : presentForecast(JSON.parse(row.forecast) as KeptForecast, row.stopAt, timeZone)
  return {
    gapLeft: row.gapLeftMm as GlandState['gapLeft'],
    gapRight: row.gapRightMm as GlandState['gapRight'],
    gapIsInferred: row.gapIsInferred,
    reserve: row.reserveMm as GlandState['reserve'],
    reserveLimitedBy: row.reserveLimitedBy as GlandState['reserveLimitedBy'],
    runsOutOn: row.runsOutAt && dayAt(row.runsOutAt, timeZone),
    forecast,
    nextLook: row.nextLook === null ? null : presentLook(JSON.parse(row.nextLook) as KeptLook, timeZone),
    standing,
    why: whyOf(row, { standing, findings, forecast }, timeZone),
    findings,
    packedOn: row.packedAt?.toISOString() ?? null,
    packingFamily: row.packingFamily,
    lastSeenAt: row.lastSeenAt?.toISOString() ?? null,
    entryCount: row.entryCount,
  }
}

function standingOfRow({ reserveMm, chanceBeforeStop }: ValveStateModel, bands: StandingBands): Standing {
  return standingOf(
    {
      reserve: reserveMm === null ? null : mm(reserveMm),
      chanceBeforeStop: chanceBeforeStop === null ? null : ratio(chanceBeforeStop),
    },
    bands,
  )
}

function whyOf(
  row: ValveStateModel,
  { standing, findings, forecast }: Pick<GlandState, 'standing' | 'findings' | 'forecast'>,
  timeZone: string,
): string {
  const day = (date: Date) => format(new TZDate(date, timeZone), 'd MMM yyyy')
  if (row.reserveMm === null)
    return row.entryCount === 0
      ? 'nobody has entered anything yet: measure both gaps'
      : 'the gap is not known: measure both sides'
  const stands = findings.find((finding) => finding.code !== 'reserve/no-travel-left')?.detail
  if (standing === 'spent') {
    const where = row.reserveLimitedBy === 'thread' ? 'the nuts are at the end of their thread' : 'no travel left'
    return `${where}${row.runsOutAt ? ` since ${day(row.runsOutAt)}` : ''}${stands ? `; ${stands}` : ''}`
  }
  const left = `${millimetres(row.reserveMm)} left`
  const ahead = forecast === null ? 'nothing read yet to forecast from' : forecastSentence(forecast)
  const inferred = row.gapIsInferred ? '; worked out from turns, measure' : ''
  return `${left}, ${ahead}${stands ? `; ${stands}` : inferred}`
}
