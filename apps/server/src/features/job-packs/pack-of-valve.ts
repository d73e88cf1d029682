import { setImmediate } from 'node:timers/promises'
import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { ValveInput } from '@glandkeeper/contract/valves'
import type { AreaModel, ValveModel } from '../../generated/sqlite/models.ts'
import { groupedBy } from '../../platform/grouped-by.ts'
import type { Read } from '../../platform/store.ts'
import { cardBasis, cardOfRow } from '../cut-cards/index.ts'
import { addressOf } from '../labels/index.ts'
import { packingNeeds } from '../stock/index.ts'
import { presentInput } from '../valves/index.ts'
import { type Drawn, drawnFromStore } from './drawn-from-store.ts'

/** All that the sheets of one valve say, before anything is written in by hand. */
export interface ValvePack {
  readonly card: CutCard
  /** What the code on each page says. */
  readonly address: string
  readonly valve: Pick<ValveInput, 'level' | 'access' | 'valveKind' | 'stemMovement' | 'isolatesOnLine' | 'isolationBoundary'>
  /** The other valves of its boundary, as the register has them. */
  readonly isolatedWith: readonly string[]
  readonly drawn: readonly Drawn[]
}

interface ToPack {
  readonly siteId: string
  readonly origin: string
  readonly now: Date
}

export type ValveRow = ValveModel & { readonly area: AreaModel }

/** A pack for each valve, in the order given. */
export async function packsOf(read: Read, rows: readonly ValveRow[], { siteId, origin, now }: ToPack): Promise<ValvePack[]> {
  const ids = rows.map(({ id }) => id)
  const [basis, boundaries, needs] = await Promise.all([
    cardBasis(read, siteId, now),
    valvesOfBoundaries(read, siteId, rows),
    packingNeeds(read, siteId, ids),
  ])
  const packs: ValvePack[] = []
  for (const row of rows) {
    const card = await cardOfRow(read, row, basis)
    packs.push({
      card,
      address: addressOf(row.tag, origin),
      valve: presentInput(row),
      isolatedWith: (boundaries.get(row.isolationBoundary) ?? []).map(({ tag }) => tag).filter((tag) => tag !== row.tag),
      drawn: drawnFromStore(card, needs.get(row.id) ?? { open: 'packing not known' }),
    })
    // Other requests go in between.
    await setImmediate()
  }
  return packs
}

async function valvesOfBoundaries(
  read: Read,
  siteId: string,
  rows: readonly ValveRow[],
): Promise<Map<string, { readonly tag: string }[]>> {
  const named = [...new Set(rows.map(({ isolationBoundary }) => isolationBoundary))].filter((name) => name !== '')
  const valves = await read.valve.findMany({
    where: { siteId, retiredAt: null, isolationBoundary: { in: named } },
    select: { tag: true, isolationBoundary: true },
    orderBy: { tag: 'asc' },
  })
  return groupedBy(valves, ({ isolationBoundary }) => isolationBoundary)
}
