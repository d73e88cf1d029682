import type { LeakHistory } from '@glandkeeper/contract/leaks'
import type { LeakCourse } from '@glandkeeper/drawings/leak-course'
import { doingsOf, tightens } from '@glandkeeper/engines/leak/looks'
import { movesFollower } from '@glandkeeper/engines/reserve/facts'
import { addMonths } from 'date-fns/addMonths'
import { addYears } from 'date-fns/addYears'
import { differenceInMonths } from 'date-fns/differenceInMonths'
import { format } from 'date-fns/format'
import { parseISO } from 'date-fns/parseISO'
import { dayAt, startOfDayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { type KnownGland, knownGland } from './known-gland.ts'
import { historyOf } from './leak-history.ts'

/** Everything a leak history on paper says: plain values, for a thread that prints. */
export interface HistoryToPrint {
  readonly tag: string
  readonly description: string
  readonly about: string
  readonly siteName: string
  readonly timeZone: string
  readonly madeOn: string
  readonly history: LeakHistory
  readonly course: Omit<LeakCourse, 'width'>
}

export async function historyToPrint(read: Read, siteId: string, tag: string, now: Date): Promise<HistoryToPrint> {
  const known = await knownGland(read, siteId, tag)
  const { valve, area, site } = known
  return {
    tag: valve.tag,
    description: valve.description,
    about: [
      area.name,
      valve.service,
      valve.temperatureC !== null && `${valve.temperatureC} °C`,
      valve.pressureBar !== null && `${valve.pressureBar} bar`,
    ]
      .filter(Boolean)
      .join(' · '),
    siteName: site.name,
    timeZone: site.timeZone,
    madeOn: dayAt(now, site.timeZone),
    history: historyOf(known, now),
    course: courseOf(known, now),
  }
}

function courseOf({ standing, history, leaks, site }: KnownGland, now: Date): Omit<LeakCourse, 'width'> {
  const iso = (moment: number) => new Date(moment).toISOString()
  const from = iso(standing[0]?.takenAt ?? now.getTime() - A_YEAR)
  // Nobody saw it, a meter did: on screen it is a square too.
  const metered = new Set(
    leaks.flatMap(({ looks }) => looks.flatMap(({ factId, leaks: seen, grade }) => (seen && grade === 'dry' ? [factId] : []))),
  )
  return {
    from,
    to: now.toISOString(),
    times: timesBetween(from, now, site.timeZone),
    lives: history.lives.map((life) => ({ from: life.from === null ? null : iso(life.from), family: life.family })),
    points: history.moments
      .filter(({ kind }) => movesFollower(kind))
      .map(({ at, reserve, gapIsInferred }) => ({ at: iso(at), reserve, isInferred: gapIsInferred })),
    nips: standing.flatMap(({ takenAt, fact }) =>
      fact.kind === 'gland.nipped' && tightens(fact) ? [{ at: iso(takenAt), turns: (fact.turnsLeft + fact.turnsRight) / 2 }] : [],
    ),
    sightings: standing.flatMap(({ id, takenAt, fact }) =>
      doingsOf(fact).flatMap((doing) => {
        if (doing.kind !== 'look' || doing.grade === null) return []
        return [{ at: iso(takenAt), grade: doing.grade === 'dry' && metered.has(id) ? null : doing.grade }]
      }),
    ),
    open: leaks.flatMap(({ spells }) =>
      spells.map((spell) => ({ from: iso(spell.from), to: spell.to === null ? null : iso(spell.to) })),
    ),
    findings: history.moments.filter(({ findings }) => findings.length > 0).map(({ at }) => ({ at: iso(at) })),
  }
}

const A_YEAR = 365 * 86_400_000
const MONTHS_OF_YEARS = 30

/** The first of each year, or of each third month where the whole is short, by the calendar of the site. */
function timesBetween(from: string, now: Date, timeZone: string): LeakCourse['times'] {
  const first = parseISO(`${dayAt(new Date(from), timeZone).slice(0, 7)}-01`)
  const last = parseISO(dayAt(now, timeZone))
  const isLong = differenceInMonths(last, first) > MONTHS_OF_YEARS
  const times = []
  const start = isLong ? parseISO(`${format(first, 'yyyy')}-01-01`) : first
  for (let at = start; at <= last; at = isLong ? addYears(at, 1) : addMonths(at, 3)) {
    const moment = startOfDayAt(format(at, 'yyyy-MM-dd'), timeZone).toISOString()
    if (moment >= from) times.push({ at: moment, label: format(at, isLong ? 'yyyy' : 'MMM yyyy') })
  }
  return times
}
