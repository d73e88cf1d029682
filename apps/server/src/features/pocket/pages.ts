import type { OkIn, QueryOf } from '@glandkeeper/contract/endpoint'
import type { showPocket } from '@glandkeeper/contract/pocket'
import type { Prisma } from '../../generated/sqlite/client.ts'
import type { SignedIn } from '../../platform/auth.ts'
import type { Read } from '../../platform/store.ts'
import { placesToWalk } from '../rounds/index.ts'
import { cardsOf } from './cards.ts'

const CARDS_IN_A_PAGE = 60
/** A phone holds so many without trouble, at some two kilobytes each. */
const MOST_CARRIED_WHOLE = 5000
const MOST_CHANGED = 1000

export async function pocketPage(
  read: Read,
  me: Pick<SignedIn, 'siteId' | 'personId'>,
  { since, position, after }: QueryOf<typeof showPocket>,
  now: Date,
): Promise<OkIn<typeof showPocket>> {
  const { siteId } = me
  const { chainLength } = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { chainLength: true } })
  const changed = since === undefined ? {} : await changedSince(read, siteId, new Date(since), position ?? 0)
  const walked = await placesToWalk(read, me)
  const where = { siteId, retiredAt: null, ...(await carried(read, siteId, walked.areaIds)), ...changed }
  const [total, rows, gone] = await Promise.all([
    read.valve.count({ where }),
    read.valve.findMany({
      where: { ...where, ...(after !== undefined && { id: { gt: after } }) },
      orderBy: { id: 'asc' },
      take: CARDS_IN_A_PAGE,
      include: { area: true, state: true },
    }),
    since === undefined || after !== undefined
      ? []
      : read.valve.findMany({ where: { siteId, retiredAt: { gte: new Date(since) } }, select: { id: true } }),
  ])
  return {
    asOf: now.toISOString(),
    position: chainLength,
    cards: await cardsOf(read, siteId, { rows, walked: walked.valveIds }, now),
    gone: gone.map(({ id }) => id),
    next: rows.length < CARDS_IN_A_PAGE ? null : (rows.at(-1)?.id ?? null),
    total,
  }
}

async function carried(read: Read, siteId: string, areaIds: readonly string[]): Promise<Prisma.ValveWhereInput> {
  const all = await read.valve.count({ where: { siteId, retiredAt: null } })
  return all <= MOST_CARRIED_WHOLE ? {} : { areaId: { in: [...areaIds] } }
}

/** By their place in the chain, which has an index: looking through the times of all entries held up the whole server. */
async function changedSince(read: Read, siteId: string, moment: Date, position: number): Promise<Prisma.ValveWhereInput> {
  const entered = await read.event.groupBy({
    by: ['valveId'],
    where: { siteId, position: { gt: position } },
    orderBy: { valveId: 'asc' },
    take: MOST_CHANGED + 1,
  })
  // After a file of old entries everything is new.
  if (entered.length > MOST_CHANGED) return {}
  return { OR: [{ updatedAt: { gte: moment } }, { id: { in: entered.map(({ valveId }) => valveId) } }] }
}
