import { setImmediate } from 'node:timers/promises'
import type { OkIn, QueryOf } from '@glandkeeper/contract/endpoint'
import type { showPocket, ValveCard } from '@glandkeeper/contract/pocket'
import type { Prisma } from '../../generated/sqlite/client.ts'
import type { SignedIn } from '../../platform/auth.ts'
import type { Read } from '../../platform/store.ts'
import { forecastBasis } from '../glands/index.ts'
import { placesToWalk } from '../rounds/index.ts'
import { type EventWithPerson, valveCard, type ValveWithPlace } from '../valves/index.ts'

const CARDS_IN_A_PAGE = 60
/** A phone holds so many without trouble, at some two kilobytes each. */
const MOST_CARRIED_WHOLE = 5000

export async function pocketPage(
  read: Read,
  me: Pick<SignedIn, 'siteId' | 'personId'>,
  { since, after }: QueryOf<typeof showPocket>,
  now: Date,
): Promise<OkIn<typeof showPocket>> {
  const { siteId } = me
  const changed = since === undefined ? {} : changedSince(new Date(since))
  const where = { siteId, retiredAt: null, ...(await carried(read, me)), ...changed }
  const [total, rows, gone] = await Promise.all([
    read.valve.count({ where }),
    read.valve.findMany({
      where: { ...where, ...(after !== undefined && { id: { gt: after } }) },
      orderBy: { id: 'asc' },
      take: CARDS_IN_A_PAGE,
      include: { area: true, site: true },
    }),
    since === undefined || after !== undefined
      ? []
      : read.valve.findMany({ where: { siteId, retiredAt: { gte: new Date(since) } }, select: { id: true } }),
  ])
  return {
    asOf: now.toISOString(),
    cards: await cardsOf(read, siteId, rows, now),
    gone: gone.map(({ id }) => id),
    next: rows.length < CARDS_IN_A_PAGE ? null : (rows.at(-1)?.id ?? null),
    total,
  }
}

async function carried(read: Read, me: Pick<SignedIn, 'siteId' | 'personId'>): Promise<Prisma.ValveWhereInput> {
  const all = await read.valve.count({ where: { siteId: me.siteId, retiredAt: null } })
  return all <= MOST_CARRIED_WHOLE ? {} : { areaId: { in: await placesToWalk(read, me) } }
}

function changedSince(moment: Date): Prisma.ValveWhereInput {
  return { OR: [{ updatedAt: { gte: moment } }, { events: { some: { receivedAt: { gte: moment } } } }] }
}

async function cardsOf(read: Read, siteId: string, rows: readonly ValveWithPlace[], now: Date): Promise<ValveCard[]> {
  if (rows.length === 0) return []
  const basis = await forecastBasis(read, siteId, now)
  const events = await read.event.findMany({
    where: { siteId, valveId: { in: rows.map(({ id }) => id) } },
    include: { person: { select: { name: true } } },
    orderBy: [{ takenAt: 'desc' }, { id: 'desc' }],
  })
  const byValve = new Map<string, EventWithPerson[]>(rows.map(({ id }) => [id, []]))
  for (const event of events) byValve.get(event.valveId)?.push(event)
  const cards: ValveCard[] = []
  for (const row of rows) {
    cards.push(valveCard(row, byValve.get(row.id) ?? [], basis, now))
    // Each is a forecast; other requests go in between.
    await setImmediate()
  }
  return cards
}
