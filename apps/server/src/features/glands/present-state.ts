import type { GlandState } from '@glandkeeper/contract/reserve'
import type { SettingValues } from '@glandkeeper/contract/settings'
import type { ReserveFinding } from '@glandkeeper/engines/reserve/findings'
import { type Standing, type StandingBands, standingOf } from '@glandkeeper/engines/reserve/standing'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'
import { mm, ratio } from '@glandkeeper/units/quantity'
import { format } from 'date-fns/format'
import { parseISO } from 'date-fns/parseISO'
import type { Prisma } from '../../generated/sqlite/client.ts'
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

/** What the board and the valve page both say of a gland. */
export type GlandStands = Pick<
  GlandState,
  'gapLeft' | 'gapRight' | 'gapIsInferred' | 'reserve' | 'reserveLimitedBy' | 'runsOutOn' | 'standing' | 'findings' | 'lastSeenAt'
> & {
  /** Why there is no forecast to speak of: nothing known, or nothing left. */
  readonly withoutForecast: string | null
}

/** The columns of a kept state that say how a gland stands. */
export const columnsOfStanding = {
  gapLeftMm: true,
  gapRightMm: true,
  gapIsInferred: true,
  reserveMm: true,
  reserveLimitedBy: true,
  runsOutAt: true,
  chanceBeforeStop: true,
  lastSeenAt: true,
  findings: true,
  entryCount: true,
} satisfies Prisma.ValveStateSelect

type KeptStanding = Pick<ValveStateModel, keyof typeof columnsOfStanding>

/** As little as a row of the board needs: a page has a hundred, and every one of them was made whole before. */
export function glandStands(row: KeptStanding, { timeZone, bands }: AsOf): GlandStands {
  const standing = standingOfRow(row, bands)
  const findings = findingsInWords(JSON.parse(row.findings) as ReserveFinding[])
  return {
    gapLeft: row.gapLeftMm as GlandState['gapLeft'],
    gapRight: row.gapRightMm as GlandState['gapRight'],
    gapIsInferred: row.gapIsInferred,
    reserve: row.reserveMm as GlandState['reserve'],
    reserveLimitedBy: row.reserveLimitedBy as GlandState['reserveLimitedBy'],
    runsOutOn: row.runsOutAt && dayAt(row.runsOutAt, timeZone),
    standing,
    findings,
    lastSeenAt: row.lastSeenAt?.toISOString() ?? null,
    withoutForecast: withoutForecast(row, { standing, findings }, timeZone),
  }
}

/** A state row in the terms of the contract, with the word it stands at and the sentence that says why. */
export function presentState(row: ValveStateModel, asOf: AsOf): GlandState {
  const { timeZone } = asOf
  const { withoutForecast: reason, ...stands } = glandStands(row, asOf)
  const forecast =
    row.forecast === null || row.stopAt === null
      ? null
      : presentForecast(JSON.parse(row.forecast) as KeptForecast, row.stopAt, timeZone)
  return {
    ...stands,
    forecast,
    nextLook: row.nextLook === null ? null : presentLook(JSON.parse(row.nextLook) as KeptLook, timeZone),
    why: reason ?? whyOf(row, { findings: stands.findings, forecast }),
    packedOn: row.packedAt?.toISOString() ?? null,
    packingFamily: row.packingFamily,
    entryCount: row.entryCount,
  }
}

/** The word a kept state stands at. */
export function standingOfRow(
  { reserveMm, chanceBeforeStop }: Pick<ValveStateModel, 'reserveMm' | 'chanceBeforeStop'>,
  bands: StandingBands,
): Standing {
  return standingOf(
    {
      reserve: reserveMm === null ? null : mm(reserveMm),
      chanceBeforeStop: chanceBeforeStop === null ? null : ratio(chanceBeforeStop),
    },
    bands,
  )
}

type Known = Pick<GlandState, 'standing' | 'findings' | 'forecast'>

function withoutForecast(row: KeptStanding, { standing, findings }: Omit<Known, 'forecast'>, timeZone: string): string | null {
  if (row.reserveMm === null)
    return row.entryCount === 0
      ? 'nobody has entered anything yet: measure both gaps'
      : 'the gap is not known: measure both sides'
  if (standing !== 'spent') return null
  const where = row.reserveLimitedBy === 'thread' ? 'the nuts are at the end of their thread' : 'no travel left'
  const since = row.runsOutAt ? ` since ${format(parseISO(dayAt(row.runsOutAt, timeZone)), 'd MMM yyyy')}` : ''
  const further = standsOut(findings)
  return `${where}${since}${further ? `; ${further}` : ''}`
}

function whyOf(row: ValveStateModel, { findings, forecast }: Omit<Known, 'standing'>): string {
  const left = `${millimetres(row.reserveMm ?? 0)} left`
  const ahead = forecast === null ? 'nothing read yet to forecast from' : forecastSentence(forecast)
  const inferred = row.gapIsInferred ? '; worked out from turns, measure' : ''
  const further = standsOut(findings)
  return `${left}, ${ahead}${further ? `; ${further}` : inferred}`
}

function standsOut(findings: GlandState['findings']): string | null {
  return findings.find((finding) => finding.code !== 'reserve/no-travel-left')?.detail ?? null
}
