import { setImmediate } from 'node:timers/promises'
import type { FieldEvent } from '@glandkeeper/contract/events'
import type { SiteFamily } from '@glandkeeper/contract/packings'
import type { GlandState } from '@glandkeeper/contract/reserve'
import { format } from 'date-fns/format'
import { parseISO } from 'date-fns/parseISO'
import type { AreaModel, EventModel, ValveModel, ValveStateModel } from '../../generated/sqlite/models.ts'
import { dayAt, startOfDayAt } from '../../platform/clock.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'
import { cardOf, cautions } from '../cut-cards/index.ts'
import {
  bandsOf,
  entryInWords,
  expectedNow,
  forecastBasis,
  type ForecastBasis,
  glandRecord,
  howRowsStand,
  presentState,
} from '../glands/index.ts'
import { siteFamilies } from '../packings/index.ts'
import { presentInput } from '../valves/index.ts'
import { carryFor, type StopToCarryFor, type ToCarry } from './carry.ts'

/** One row of the sheet: what is known, before anything is written in by hand. */
export interface SheetStop extends StopToCarryFor, Pick<GlandState, 'gapLeft' | 'gapRight' | 'gapIsInferred' | 'reserve'> {
  readonly position: number
  readonly description: string
  readonly areaName: string
  readonly level: number
  readonly minutes: number | null
  /** Who put it on the round after it was made. */
  readonly addedBy: string | null
  /** The lesser gap that is to be expected on the day; null where nothing was read. */
  readonly expectedGap: number | null
  readonly lastEntry: string | null
}

export interface RoundSheet {
  readonly name: string
  readonly walkOn: string
  readonly weekOf: string | null
  readonly fitterName: string | null
  readonly crewName: string | null
  readonly areaNames: readonly string[]
  readonly minutes: number | null
  readonly metres: number | null
  readonly levels: number | null
  readonly isClosed: boolean
  readonly stops: readonly SheetStop[]
  readonly toCarry: ToCarry
  /** Those of the cut card. */
  readonly cautions: readonly string[]
}

type ValveRow = ValveModel & { readonly area: AreaModel; readonly state: ValveStateModel | null }

const stopParts = {
  position: true,
  minutes: true,
  addedBy: { select: { name: true } },
  valve: { include: { area: true, state: true } },
} as const

/** A round with all that its paper says; refused where the site has none of that id. A closed one may still be typed in. */
export async function roundSheet(read: Read, siteId: string, roundId: string, now: Date): Promise<RoundSheet> {
  const round = await read.round.findFirst({
    where: { id: roundId, siteId },
    include: {
      fitter: { select: { name: true } },
      crew: { select: { name: true } },
      site: { select: { timeZone: true } },
      stops: { orderBy: { position: 'asc' }, select: stopParts },
    },
  })
  if (!round) throw new Refusal('round/unknown', roundId)
  const [basis, families] = await Promise.all([forecastBasis(read, siteId, now), siteFamilies(read, siteId)])
  const { timeZone } = round.site
  const walked = startOfDayAt(round.walkOn, timeZone)
  const around: Around = { basis, families, timeZone, now, onTheDay: walked > now ? walked : now }
  const stops: SheetStop[] = []
  for (const { position, minutes, addedBy, valve } of round.stops) {
    stops.push({ position, minutes, addedBy: addedBy?.name ?? null, ...(await valveOnSheet(read, valve, around)) })
    // Other requests go in between.
    await setImmediate()
  }
  return {
    name: round.name,
    walkOn: round.walkOn,
    weekOf: round.weekOf,
    fitterName: round.fitter?.name ?? null,
    crewName: round.crew?.name ?? null,
    areaNames: [...new Set(stops.map(({ areaName }) => areaName))],
    minutes: round.minutes,
    metres: round.metres,
    levels: round.levels,
    isClosed: round.closedAt !== null,
    stops,
    toCarry: carryFor(stops, basis.settings),
    cautions,
  }
}

interface Around {
  readonly basis: ForecastBasis
  readonly families: readonly SiteFamily[]
  readonly timeZone: string
  readonly now: Date
  readonly onTheDay: Date
}

type OfValve = Omit<SheetStop, 'position' | 'minutes' | 'addedBy'>

async function valveOnSheet(read: Read, row: ValveRow, { basis, families, timeZone, now, onTheDay }: Around): Promise<OfValve> {
  const events: EventModel[] = await read.event.findMany({
    where: { siteId: row.siteId, valveId: row.id },
    orderBy: [{ takenAt: 'desc' }, { id: 'desc' }],
  })
  const record = glandRecord(row, events, basis)
  // The kept state where there is one: paper and board say the same.
  const state = presentState(row.state ?? record.state, { timeZone, bands: bandsOf(basis.settings) })
  const life = record.history.lives.find(({ to }) => to === null)
  const familyName = life?.family ?? null
  const card = cardOf({
    valve: { ...presentInput(row), areaName: row.area.name },
    familyName,
    family: families.find(({ name }) => name === familyName) ?? null,
    lastRings: life?.rings ?? null,
    rules: basis.settings,
    now,
    timeZone,
  })
  const expects = expectedNow(row.service, record.ahead.lives, basis, onTheDay)
  return {
    tag: row.tag,
    description: row.description,
    areaName: row.area.name,
    level: row.level,
    gapLeft: state.gapLeft,
    gapRight: state.gapRight,
    gapIsInferred: state.gapIsInferred,
    reserve: state.reserve,
    standing: state.standing,
    expectedGap: expectedGapOf(state, expects?.reserve ?? null),
    lastEntry: lastEntryOf(events, timeZone),
    card,
  }
}

/** The gap goes with the reserve: as much less as there is less of it. No follower stands deeper than its box face. */
function expectedGapOf({ gapLeft, gapRight, reserve }: GlandState, expected: number | null): number | null {
  const known = [gapLeft, gapRight].filter((gap) => gap !== null)
  if (known.length === 0 || reserve === null || expected === null) return null
  return Math.max(Math.min(...known) - reserve + expected, 0)
}

/** The newest entry that nobody has taken back, with its day; one that was put right, as it was put right. */
function lastEntryOf(events: readonly EventModel[], timeZone: string): string | null {
  const stands = howRowsStand(events)
  const last = events.find(({ id }) => ['as entered', 'corrected'].includes(stands.get(id) ?? ''))
  if (!last) return null
  const said = events.map(({ body }) => JSON.parse(body) as FieldEvent)
  const putRight = said.find((event) => event.kind === 'fact.corrected' && event.corrects === last.id)
  const day = format(parseISO(dayAt(last.takenAt, timeZone)), 'd MMM yyyy')
  return `${day}: ${entryInWords(putRight ?? (JSON.parse(last.body) as FieldEvent))}`
}
