import type { QueryOf } from '@glandkeeper/contract/endpoint'
import type { listLeaks } from '@glandkeeper/contract/leaks'
import type { Prisma } from '../../generated/sqlite/client.ts'
import type { Read } from '../../platform/store.ts'

type Page = Pick<QueryOf<typeof listLeaks>, 'order' | 'offset' | 'limit'>
/** What the leaks of one site are narrowed by; service and area are kept apart, because they are those of the valve too. */
export interface LeaksWhere extends Prisma.LeakWhereInput {
  readonly siteId: string
  readonly service?: string
  readonly areaId?: string
}

const newestFirst: Prisma.LeakOrderByWithRelationInput[] = [{ openedAt: 'desc' }, { id: 'desc' }]
const oldestFirst: Prisma.LeakOrderByWithRelationInput[] = [{ openedAt: 'asc' }, { id: 'asc' }]
const shown = {
  valve: { select: { tag: true, description: true, service: true, area: { select: { code: true } } } },
} as const

type Row = Prisma.LeakGetPayload<{ include: typeof shown }>
interface RowsOfAll {
  readonly total: number
  readonly rows: Row[]
}

/** One page of leaks with their valves, and how many there are on all pages. */
export async function pageOfLeaks(read: Read, where: LeaksWhere, { order, offset, limit }: Page): Promise<RowsOfAll> {
  if (order === 'worst first') return worstFirst(read, where, { offset, limit })
  const orderBy = order === 'newest first' ? newestFirst : oldestFirst
  const [total, rows] = await Promise.all([
    read.leak.count({ where }),
    read.leak.findMany({ where, orderBy, skip: offset, take: limit, include: shown }),
  ])
  return { total, rows }
}

/** Grade by grade, those that only a meter showed last: sorted by grade, all leaks of a plant would be sorted for a page. */
async function worstFirst(read: Read, where: LeaksWhere, { offset, limit }: Omit<Page, 'order'>): Promise<RowsOfAll> {
  const grades = await read.leak.groupBy({ by: ['worst'], where, _count: { _all: true } })
  const rows: Row[] = []
  let skip = offset
  for (const { worst, _count } of grades.toSorted((one, other) => (other.worst ?? -1) - (one.worst ?? -1))) {
    if (skip < _count._all && rows.length < limit) {
      const ofGrade = { AND: [where, { worst }] }
      const take = limit - rows.length
      rows.push(...(await read.leak.findMany({ where: ofGrade, orderBy: newestFirst, skip, take, include: shown })))
    }
    skip = Math.max(0, skip - _count._all)
  }
  return { total: grades.reduce((sum, { _count }) => sum + _count._all, 0), rows }
}

/** Of fewer leaks the valves are read and counted here; of more the database asks each valve whether it has one. */
const MOST_READ = 20_000

export async function valvesOf(read: Read, where: LeaksWhere, total: number): Promise<number> {
  if (total <= MOST_READ) return (await read.leak.groupBy({ by: ['valveId'], where })).length
  const { siteId, service, areaId, ...ofLeak } = where
  const ofValve = { siteId, ...(service !== undefined && { service }), ...(areaId !== undefined && { areaId }) }
  // The index by packing begins with the site; without a packing that by valve has all that is looked at.
  const some = ofLeak.family === undefined ? ofLeak : { siteId, ...ofLeak }
  return read.valve.count({ where: { ...ofValve, leaks: { some } } })
}
