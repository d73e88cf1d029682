import type { BoardRow, showBoard, showBoardSummary } from '@glandkeeper/contract/board'
import type { OkIn, QueryOf } from '@glandkeeper/contract/endpoint'
import { Standing } from '@glandkeeper/contract/reserve'
import type { StandingBands } from '@glandkeeper/engines/reserve/standing'
import type { Prisma } from '../../generated/sqlite/client.ts'
import { dayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { type AsOf, bandsOf, columnsOfStanding, dayOfChance, glandStands, type KeptForecast, stopAfter } from '../glands/index.ts'
import { settingValuesOf } from '../settings/index.ts'
import { foldedText } from '../valves/index.ts'
import { whyInRow } from './why-in-row.ts'

type BoardQuery = QueryOf<typeof showBoard>
type Where = Prisma.ValveStateWhereInput

const orders: Readonly<Record<BoardQuery['order'], Prisma.ValveStateOrderByWithRelationInput[]>> = {
  'runs out first': [{ urgency: 'asc' }, { valveId: 'asc' }],
  'next look': [{ nextLookAt: { sort: 'asc', nulls: 'last' } }, { valveId: 'asc' }],
  'least reserve': [{ reserveMm: { sort: 'asc', nulls: 'last' } }, { valveId: 'asc' }],
  tag: [{ valve: { tag: 'asc' } }],
  'seen longest ago': [{ lastSeenAt: { sort: 'asc', nulls: 'first' } }, { valveId: 'asc' }],
}

/** What a row shows of its valve: half of the time of a page went into columns that nobody sees. */
const shownOfValve = {
  id: true,
  tag: true,
  description: true,
  service: true,
  fluid: true,
  temperatureC: true,
  keepClearMm: true,
  noseLengthMm: true,
  studThread: true,
  area: { select: { code: true } },
} satisfies Prisma.ValveSelect

/** The same of its state: what else was weighed for its next look, for one, is longer than all of this. */
const shown = {
  ...columnsOfStanding,
  forecast: true,
  nextLookAt: true,
  valve: { select: shownOfValve },
} satisfies Prisma.ValveStateSelect

type Row = Prisma.ValveStateGetPayload<{ select: typeof shown }>

export async function boardPage(read: Read, siteId: string, query: BoardQuery): Promise<OkIn<typeof showBoard>> {
  const site = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true, settings: true } })
  const bands = bandsOf(settingValuesOf(site.settings))
  const where = whereOf(siteId, query, bands)
  const [total, rows] = await Promise.all([
    read.valveState.count({ where }),
    read.valveState.findMany({
      where,
      orderBy: orders[query.order],
      skip: query.offset,
      take: query.limit,
      select: shown,
    }),
  ])
  return { total, rows: rows.map((row) => presentRow(row, { timeZone: site.timeZone, bands })) }
}

export async function boardSummary(read: Read, siteId: string, now: Date): Promise<OkIn<typeof showBoardSummary>> {
  const listed = { siteId, retired: false }
  const site = await read.site.findUniqueOrThrow({
    where: { id: siteId },
    select: { nextStopOn: true, timeZone: true, settings: true },
  })
  const settings = settingValuesOf(site.settings)
  const bands = bandsOf(settings)
  const [areas, byArea, urgentByArea, services, ...counts] = await Promise.all([
    read.area.findMany({ where: { siteId }, orderBy: [{ walkPosition: 'asc' }, { code: 'asc' }] }),
    read.valveState.groupBy({ by: ['areaId'], where: listed, _count: { _all: true } }),
    read.valveState.groupBy({
      by: ['areaId'],
      where: { ...listed, OR: [standingWhere('spent', bands), standingWhere('book', bands)] },
      _count: { _all: true },
    }),
    read.valve.groupBy({
      by: ['service'],
      where: { siteId, retiredAt: null },
      _count: { _all: true },
      orderBy: { service: 'asc' },
    }),
    ...Standing.options.map((standing) => read.valveState.count({ where: { ...listed, ...standingWhere(standing, bands) } })),
  ])
  const countOf = (groups: readonly { areaId: string; _count: { _all: number } }[], areaId: string) =>
    groups.find((group) => group.areaId === areaId)?._count._all ?? 0
  const standing = Object.fromEntries(Standing.options.map((word, index) => [word, counts[index] ?? 0])) as Record<
    Standing,
    number
  >
  return {
    total: counts.reduce((sum, count) => sum + count, 0),
    stopOn: dayAt(stopAfter(now, site, settings), site.timeZone),
    standing,
    services: services.map(({ service, _count }) => ({ service, valves: _count._all })),
    areas: areas.map(({ id, code, name }) => ({
      code,
      name,
      valves: countOf(byArea, id),
      bookOrSpent: countOf(urgentByArea, id),
    })),
  }
}

function whereOf(siteId: string, query: BoardQuery, bands: StandingBands): Where {
  const valve: Prisma.ValveWhereInput = {
    ...(query.area !== undefined && { area: { code: query.area } }),
    ...(query.service !== undefined && { service: query.service }),
    ...(query.find !== undefined && hasWords(query.find)),
  }
  return {
    siteId,
    retired: false,
    ...(query.standing && standingWhere(query.standing, bands)),
    ...(Object.keys(valve).length > 0 && { valve }),
  }
}

/** Valves that have every one of these words somewhere in what a person searches by. */
export function hasWords(find: string): Prisma.ValveWhereInput {
  if (find.trim() === '') return {}
  const words = foldedText(find).trim().split(/\s+/)
  return { AND: words.map((word) => ({ searchText: { contains: word } })) }
}

/** The same rule as `standingOf`, as a question to the database; a test holds the two together. */
export function standingWhere(standing: Standing, bands: StandingBands): Where {
  const atOrOver = ({ reserve, chance }: StandingBands['book']): Where => ({
    OR: [{ reserveMm: { lte: reserve } }, { chanceBeforeStop: { gte: chance } }],
  })
  const clearOf = ({ reserve, chance }: StandingBands['book']): Where => ({
    reserveMm: { gt: reserve },
    OR: [{ chanceBeforeStop: null }, { chanceBeforeStop: { lt: chance } }],
  })
  switch (standing) {
    case 'spent':
      return { reserveMm: { lte: 0 } }
    case 'book':
      return { AND: [{ reserveMm: { gt: 0 } }, atOrOver(bands.book)] }
    case 'watch':
      return { OR: [{ reserveMm: null }, { AND: [{ reserveMm: { gt: 0 } }, clearOf(bands.book), atOrOver(bands.watch)] }] }
    case 'ample':
      return { AND: [{ reserveMm: { gt: 0 } }, clearOf(bands.book), clearOf(bands.watch)] }
  }
}

function presentRow(row: Row, asOf: AsOf): BoardRow {
  const { valve } = row
  const stands = glandStands(row, asOf)
  const forecast = row.forecast === null ? null : (JSON.parse(row.forecast) as KeptForecast)
  // Written out: spreading one object into another took a quarter of the time of a page.
  return {
    valveId: valve.id,
    tag: valve.tag,
    description: valve.description,
    service: valve.service,
    fluid: valve.fluid,
    temperature: valve.temperatureC as BoardRow['temperature'],
    areaCode: valve.area.code,
    gapLeft: stands.gapLeft,
    gapRight: stands.gapRight,
    gapIsInferred: stands.gapIsInferred,
    keepClear: valve.keepClearMm as BoardRow['keepClear'],
    noseLength: valve.noseLengthMm as BoardRow['noseLength'],
    reserve: stands.reserve,
    reserveLimitedBy: stands.reserveLimitedBy,
    runsOutOn: stands.runsOutOn,
    runsOutEarly: forecast && dayOfChance(forecast, 0.1, asOf.timeZone),
    runsOutLate: forecast && dayOfChance(forecast, 0.9, asOf.timeZone),
    chanceBeforeStop: (forecast?.chanceBeforeStop ?? null) as BoardRow['chanceBeforeStop'],
    nextLookOn: row.nextLookAt && dayAt(row.nextLookAt, asOf.timeZone),
    standing: stands.standing,
    why: whyInRow(stands, valve.studThread),
    lastSeenAt: stands.lastSeenAt,
  }
}
