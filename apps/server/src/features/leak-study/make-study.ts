import type { StudyPeriod } from '@glandkeeper/contract/leak-study'
import { type RepeatLeaker, repeatLeakers, type WatchedValve } from '@glandkeeper/engines/leak/repeat-leakers'
import type { RecordedLife } from '@glandkeeper/engines/packing/lives/lives'
import { type Instant, instant } from '@glandkeeper/units/quantity'
import { format } from 'date-fns/format'
import { parseISO } from 'date-fns/parseISO'
import { subYears } from 'date-fns/subYears'
import { dayAt, startOfDayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { settingValuesOf } from '../settings/index.ts'
import { livesCompared } from './compared-lives.ts'
import type { StudyBody } from './kept-study.ts'
import { outagesOver } from './outage-sums.ts'
import { PeriodSums } from './period-sums.ts'
import { rounded } from './rate-table.ts'
import { recordedLives } from './recorded-lives.ts'
import { valvesWithEvents, type WatchedGland, watchedGland } from './watched-gland.ts'

export interface StudyRequest {
  readonly siteId: string
  readonly now: Date
}

const MOST_REPEAT_LEAKERS = 200
/** The rest is the comparing. */
const SHARE_OF_READING = 0.9

/** Reads every entry of a site once and sums up what all of them say of leaks and packings. */
export async function makeStudy(
  read: Pick<Read, 'site' | 'outage' | 'valve' | 'event'>,
  { siteId, now }: StudyRequest,
  onProgress: (share: number) => void,
): Promise<StudyBody> {
  const site = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true, settings: true } })
  const { watchReserve } = settingValuesOf(site.settings)
  const outages = await outagesOver(read, siteId, site.timeZone)
  const begins = beginnings(now, site.timeZone)
  const sums = {
    all: new PeriodSums(begins.all, outages),
    'two years': new PeriodSums(begins['two years'], outages),
    'one year': new PeriodSums(begins['one year'], outages),
  } satisfies Record<StudyPeriod, PeriodSums>
  const watched: WatchedValve[] = []
  const lives: RecordedLife[] = []
  const all = await read.valve.count({ where: { siteId } })
  let valves = 0
  for await (const { valve, events } of valvesWithEvents(read, siteId)) {
    valves += 1
    if (valves % 100 === 0) onProgress(Math.min(1, valves / all) * SHARE_OF_READING)
    const gland = watchedGland(valve, events, instant(now.getTime()))
    if (gland === null) continue
    for (const period of Object.values(sums)) period.add(gland)
    watched.push(watchedValve(gland))
    lives.push(...recordedLives(gland, watchReserve))
  }
  onProgress(SHARE_OF_READING)
  const course = courseOf(watched)
  const compared = [...livesCompared(lives)]
  return {
    valves,
    course,
    periods: {
      all: JSON.stringify(sums.all.figures()),
      'two years': JSON.stringify(sums['two years'].figures()),
      'one year': JSON.stringify(sums['one year'].figures()),
    },
    services: [...new Set(lives.map(({ service }) => service))].toSorted(),
    lives: Object.fromEntries(compared),
  }
}

/** Whole days of the site, so that a study of the evening counts over the same years as one of the morning. */
function beginnings(now: Date, timeZone: string): Record<StudyPeriod, Instant> {
  const yearsAgo = (years: number) => {
    const day = format(subYears(parseISO(dayAt(now, timeZone)), years), 'yyyy-MM-dd')
    return instant(startOfDayAt(day, timeZone).getTime())
  }
  return { all: instant(0), 'two years': yearsAgo(2), 'one year': yearsAgo(1) }
}

function watchedValve({ tag, from, to, leaks }: WatchedGland): WatchedValve {
  const openedAt = leaks.map((leak) => leak.openedAt).filter((at) => at < to)
  return { id: tag, watchedFrom: from, watchedTo: to, openedAt }
}

function courseOf(valves: readonly WatchedValve[]): StudyBody['course'] {
  const found = repeatLeakers({ valves, confidence: 0.95 })
  // Nobody watched: nothing to say of anybody.
  if (!found.ok) return { meanCourse: [], repeatLeakers: [], aboveInAll: 0 }
  const orNull = (value: number | null) => (value === null ? null : rounded(value, 4))
  return {
    meanCourse: found.steps.map(({ age, atRisk, mean, lower, upper }) => ({
      days: age,
      atRisk,
      mean: rounded(mean, 4),
      lower: orNull(lower),
      upper: orNull(upper),
    })),
    repeatLeakers: found.above.slice(0, MOST_REPEAT_LEAKERS).map(presentLeaker),
    aboveInAll: found.above.length,
  }
}

function presentLeaker({ id, leaks, expected, upper, chance }: RepeatLeaker): StudyBody['course']['repeatLeakers'][number] {
  return { tag: id, leaks, expected: rounded(expected, 3), upper: rounded(upper, 3), chance }
}
