import { TZDate } from '@date-fns/tz'
import type { GlandState } from '@glandkeeper/contract/reserve'
import type { ReserveFinding } from '@glandkeeper/engines/reserve/findings'
import { type Standing, standingOf } from '@glandkeeper/engines/reserve/standing'
import { instant, mm } from '@glandkeeper/units/quantity'
import { formatMillimetres as millimetres } from '@glandkeeper/units/format'
import { format } from 'date-fns'
import type { ValveStateModel } from '../../generated/sqlite/models.ts'
import { findingsInWords } from './findings-in-words.ts'

export interface AsOf {
  readonly now: Date
  readonly timeZone: string
}

/** A state row in the terms of the contract, with the word it stands at today and the sentence that says why. */
export function presentState(row: ValveStateModel, asOf: AsOf): GlandState {
  const standing = standingOfRow(row, asOf.now)
  const findings = findingsInWords(JSON.parse(row.findings) as ReserveFinding[])
  return {
    gapLeft: row.gapLeftMm as GlandState['gapLeft'],
    gapRight: row.gapRightMm as GlandState['gapRight'],
    gapIsInferred: row.gapIsInferred,
    reserve: row.reserveMm as GlandState['reserve'],
    reserveLimitedBy: row.reserveLimitedBy as GlandState['reserveLimitedBy'],
    runsOutOn: row.runsOutAt && format(new TZDate(row.runsOutAt, asOf.timeZone), 'yyyy-MM-dd'),
    standing,
    why: whyOf(row, standing, findings, asOf),
    findings,
    packedOn: row.packedAt?.toISOString() ?? null,
    packingFamily: row.packingFamily,
    lastSeenAt: row.lastSeenAt?.toISOString() ?? null,
    entryCount: row.entryCount,
  }
}

function standingOfRow(row: ValveStateModel, now: Date): Standing {
  return standingOf(
    { reserve: row.reserveMm === null ? null : mm(row.reserveMm), runsOutAt: row.runsOutAt && instant(row.runsOutAt.getTime()) },
    instant(now.getTime()),
  )
}

function lineInWords(runsOutAt: Date | null, now: Date, day: (date: Date) => string): string {
  if (runsOutAt === null) return 'no line can be drawn yet'
  return runsOutAt <= now ? `by the line it was to be used up on ${day(runsOutAt)}` : `used up about ${day(runsOutAt)}`
}

function whyOf(row: ValveStateModel, standing: Standing, findings: GlandState['findings'], asOf: AsOf): string {
  const day = (date: Date) => format(new TZDate(date, asOf.timeZone), 'd MMM yyyy')
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
  const line = lineInWords(row.runsOutAt, asOf.now, day)
  const inferred = row.gapIsInferred ? '; worked out from turns, measure' : ''
  return `${left}, ${line}${stands ? `; ${stands}` : inferred}`
}
