import type { OkOf } from '@glandkeeper/contract/endpoint'
import type { compareRepackPlans, RepackDifference } from '@glandkeeper/contract/repack-plans'
import type { Read } from '../../platform/store.ts'
import { presentHeads, repackPlanOf } from './present-repack-plan.ts'

const MOST_SHOWN = 500

type Placed = RepackDifference['one']

/** Valves that two plans have elsewhere, those whose chance of running out grows most first. */
export async function comparedPlans(
  read: Read,
  siteId: string,
  { planId, otherId }: { readonly planId: string; readonly otherId: string },
): Promise<OkOf<typeof compareRepackPlans>> {
  const plans = [await repackPlanOf(read, siteId, planId), await repackPlanOf(read, siteId, otherId)]
  const heads = await presentHeads(read, siteId, plans)
  const [one, other] = [heads[0], heads[1]]
  if (!one || !other) throw new TypeError('a head for each plan')
  const [ofOne, ofOther] = await Promise.all([placedBy(read, planId), placedBy(read, otherId)])
  const found: { readonly difference: RepackDifference; readonly growth: number }[] = []
  for (const valveId of new Set([...ofOne.keys(), ...ofOther.keys()])) {
    const [before, after] = [ofOne.get(valveId), ofOther.get(valveId)]
    const known = before ?? after
    if (!known || (before && after && before.placed.slotId === after.placed.slotId)) continue
    const growth = (after?.placed.chanceOut ?? 0) - (before?.placed.chanceOut ?? 0)
    found.push({ difference: { ...known.about, one: before?.placed ?? null, other: after?.placed ?? null }, growth })
  }
  found.sort((a, b) => b.growth - a.growth || (a.difference.tag < b.difference.tag ? -1 : 1))
  return {
    one,
    other,
    same: [...ofOne.keys()].filter((id) => ofOther.get(id)?.placed.slotId === ofOne.get(id)?.placed.slotId).length,
    differences: found.slice(0, MOST_SHOWN).map(({ difference }) => difference),
    differenceCount: found.length,
  }
}

async function placedBy(read: Read, planId: string) {
  const rows = await read.plannedRepack.findMany({
    where: { planId },
    select: { valveId: true, slotId: true, chanceOut: true, valve: { select: { tag: true, area: { select: { code: true } } } } },
  })
  return new Map(
    rows.map(({ valveId, slotId, chanceOut, valve }) => [
      valveId,
      { about: { tag: valve.tag, areaCode: valve.area.code }, placed: { slotId, chanceOut } as NonNullable<Placed> },
    ]),
  )
}
