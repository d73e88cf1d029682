import type { BoardRow, showBoard, showBoardSummary } from '@glandkeeper/contract/board'
import type { OkIn, QueryOf } from '@glandkeeper/contract/endpoint'
import { Standing } from '@glandkeeper/contract/reserve'
import { type StandingBands, standingBands } from '@glandkeeper/engines/reserve/standing'
import type { Prisma } from '../../generated/sqlite/client.ts'
import type { AreaModel, ValveModel, ValveStateModel } from '../../generated/sqlite/models.ts'
import type { Read } from '../../platform/store.ts'
import { presentState } from '../glands/index.ts'
import { foldedText } from '../valves/index.ts'
import { whyInRow } from './why-in-row.ts'

type BoardQuery = QueryOf<typeof showBoard>
type Where = Prisma.ValveStateWhereInput

const orders: Readonly<Record<BoardQuery['order'], Prisma.ValveStateOrderByWithRelationInput[]>> = {
  'runs out first': [{ urgency: 'asc' }, { valveId: 'asc' }],
  'least reserve': [{ reserveMm: { sort: 'asc', nulls: 'last' } }, { valveId: 'asc' }],
  tag: [{ valve: { tag: 'asc' } }],
  'seen longest ago': [{ lastSeenAt: { sort: 'asc', nulls: 'first' } }, { valveId: 'asc' }],
}

export async function boardPage(read: Read, siteId: string, query: BoardQuery, now: Date): Promise<OkIn<typeof showBoard>> {
  const where = whereOf(siteId, query, now)
  const [site, total, rows] = await Promise.all([
    read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } }),
    read.valveState.count({ where }),
    read.valveState.findMany({
      where,
      orderBy: orders[query.order],
      skip: query.offset,
      take: query.limit,
      include: { valve: { include: { area: true } } },
    }),
  ])
  return { total, rows: rows.map((row) => presentRow(row, { now, timeZone: site.timeZone })) }
}

export async function boardSummary(read: Read, siteId: string, now: Date): Promise<OkIn<typeof showBoardSummary>> {
  const listed = { siteId, retired: false }
  const [areas, byArea, urgentByArea, services, ...counts] = await Promise.all([
    read.area.findMany({ where: { siteId }, orderBy: [{ walkPosition: 'asc' }, { code: 'asc' }] }),
    read.valveState.groupBy({ by: ['areaId'], where: listed, _count: { _all: true } }),
    read.valveState.groupBy({
      by: ['areaId'],
      where: { ...listed, OR: [standingWhere('spent', now), standingWhere('book', now)] },
      _count: { _all: true },
    }),
    read.valve.groupBy({
      by: ['service'],
      where: { siteId, retiredAt: null },
      _count: { _all: true },
      orderBy: { service: 'asc' },
    }),
    ...Standing.options.map((standing) => read.valveState.count({ where: { ...listed, ...standingWhere(standing, now) } })),
  ])
  const countOf = (groups: readonly { areaId: string; _count: { _all: number } }[], areaId: string) =>
    groups.find((group) => group.areaId === areaId)?._count._all ?? 0
  const standing = Object.fromEntries(Standing.options.map((word, index) => [word, counts[index] ?? 0])) as Record<
    Standing,
    number
  >
  return {
    total: counts.reduce((sum, count) => sum + count, 0),
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

function whereOf(siteId: string, query: BoardQuery, now: Date): Where {
  const valve: Prisma.ValveWhereInput = {
    ...(query.area !== undefined && { area: { code: query.area } }),
    ...(query.service !== undefined && { service: query.service }),
    ...(query.find !== undefined &&
      query.find.trim() !== '' && {
        AND: foldedText(query.find)
          .trim()
          .split(/\s+/)
          .map((word) => ({ searchText: { contains: word } })),
      }),
  }
  return {
    siteId,
    retired: false,
    ...(query.standing && standingWhere(query.standing, now)),
    ...(Object.keys(valve).length > 0 && { valve }),
  }
}

/** The same rule as `standingOf`, as a question to the database; a test holds the two together. */
export function standingWhere(standing: Standing, now: Date, bands: StandingBands = standingBands): Where {
  const within = (days: number) => new Date(now.getTime() + days * 86_400_000)
  const atOrUnder = ({ reserve, days }: StandingBands['book']): Where => ({
    OR: [{ reserveMm: { lte: reserve } }, { runsOutAt: { lte: within(days) } }],
  })
  const clearOf = ({ reserve, days }: StandingBands['book']): Where => ({
    reserveMm: { gt: reserve },
    OR: [{ runsOutAt: null }, { runsOutAt: { gt: within(days) } }],
  })
  switch (standing) {
    case 'spent':
      return { reserveMm: { lte: 0 } }
    case 'book':
      return { AND: [{ reserveMm: { gt: 0 } }, atOrUnder(bands.book)] }
    case 'watch':
      return { OR: [{ reserveMm: null }, { AND: [{ reserveMm: { gt: 0 } }, clearOf(bands.book), atOrUnder(bands.watch)] }] }
    case 'ample':
      return { AND: [{ reserveMm: { gt: 0 } }, clearOf(bands.book), clearOf(bands.watch)] }
  }
}

function presentRow(
  { valve, ...row }: ValveStateModel & { valve: ValveModel & { area: AreaModel } },
  asOf: { now: Date; timeZone: string },
): BoardRow {
  const state = presentState(row, asOf)
  return {
    ...state,
    why: whyInRow(state, valve.studThread),
    valveId: valve.id,
    tag: valve.tag,
    description: valve.description,
    service: valve.service,
    fluid: valve.fluid,
    temperature: valve.temperatureC as BoardRow['temperature'],
    areaCode: valve.area.code,
    keepClear: valve.keepClearMm as BoardRow['keepClear'],
    noseLength: valve.noseLengthMm as BoardRow['noseLength'],
  }
}
