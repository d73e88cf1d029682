import { VALVES_IN_A_PART } from '@glandkeeper/contract/job-packs'
import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'
import { repackPlanInUse } from '../repack-plans/index.ts'
import type { ValveRow } from './pack-of-valve.ts'

/** As they are walked to. */
export const inWalkingOrder = [
  { area: { walkPosition: 'asc' } },
  { area: { code: 'asc' } },
  { level: 'asc' },
  { walkPosition: 'asc' },
  { tag: 'asc' },
] as const

interface ValvesToPack {
  readonly rows: readonly ValveRow[]
  /** What is said where there are more than are printed at once. */
  readonly note: string | null
}

/** The valve itself; with its boundary those of the plan in use that are isolated together with it, after it. */
export async function valvesToPack(read: Read, siteId: string, tag: string, isWithBoundary: boolean): Promise<ValvesToPack> {
  const row = await read.valve.findUnique({ where: { siteId_tag: { siteId, tag } }, include: { area: true } })
  if (!row) throw new Refusal('valve/unknown', tag)
  const others = isWithBoundary ? await plannedWith(read, siteId, row.id) : []
  const most = VALVES_IN_A_PART - 1
  const note = others.length > most ? `first ${VALVES_IN_A_PART} of ${others.length + 1} of its boundary` : null
  return { rows: [row, ...others.slice(0, most)], note }
}

async function plannedWith(read: Read, siteId: string, valveId: string): Promise<ValveRow[]> {
  const plan = await repackPlanInUse(read, siteId)
  const planned = plan && (await read.plannedRepack.findUnique({ where: { planId_valveId: { planId: plan.id, valveId } } }))
  if (!planned) return []
  const { planId, boundary } = planned
  return read.valve.findMany({
    where: { siteId, retiredAt: null, id: { not: valveId }, repacks: { some: { planId, boundary } } },
    include: { area: true },
    orderBy: [...inWalkingOrder],
  })
}
