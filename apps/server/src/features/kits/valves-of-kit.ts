import { standingOfRow, bandsOf } from '../glands/index.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'
import { repackPlanInUse, slotOfOutage } from '../repack-plans/index.ts'
import { siteSettings } from '../settings/index.ts'

/** What a kit is for. */
export type KitFor = { readonly tag: string } | { readonly outageId: string } | { readonly roundId: string }

export interface KitValve {
  readonly valveId: string
  readonly tag: string
  /** What was issued before went into the packing that is in it now. */
  readonly packedAt: Date | null
}

export interface ValvesOfKit {
  readonly title: string
  readonly valves: readonly KitValve[]
  readonly outageId: string | null
}

const valveParts = {
  id: true,
  tag: true,
  state: { select: { packedAt: true, reserveMm: true, chanceBeforeStop: true } },
} as const
const inWalkingOrder = [{ area: { walkPosition: 'asc' as const } }, { walkPosition: 'asc' as const }, { tag: 'asc' as const }]

/** The valves to repack: the one, those the plan in use has in the outage, or the stops that are likely to be. */
export function valvesOfKit(read: Read, siteId: string, kitFor: KitFor): Promise<ValvesOfKit> {
  if ('tag' in kitFor) return ofValve(read, siteId, kitFor.tag)
  return 'outageId' in kitFor ? ofOutage(read, siteId, kitFor.outageId) : ofRound(read, siteId, kitFor.roundId)
}

async function ofValve(read: Read, siteId: string, tag: string): Promise<ValvesOfKit> {
  const valve = await read.valve.findUnique({ where: { siteId_tag: { siteId, tag } }, select: valveParts })
  if (!valve) throw new Refusal('valve/unknown', tag)
  return { title: `Kit for ${tag}`, valves: [asKitValve(valve)], outageId: null }
}

async function ofOutage(read: Read, siteId: string, outageId: string): Promise<ValvesOfKit> {
  const outage = await read.outage.findFirst({ where: { id: outageId, siteId }, select: { name: true } })
  if (!outage) throw new Refusal('outage/unknown', outageId)
  const plan = await repackPlanInUse(read, siteId)
  const planned = plan
    ? await read.plannedRepack.findMany({
        where: { planId: plan.id, slotId: slotOfOutage(outageId), valve: { siteId, retiredAt: null } },
        orderBy: inWalkingOrder.map((valve) => ({ valve })),
        select: { valve: { select: valveParts } },
      })
    : []
  return { title: `Kit for ${outage.name}`, valves: planned.map(({ valve }) => asKitValve(valve)), outageId }
}

/** Those that a round sheet has cord carried for: stops at book or spent. */
async function ofRound(read: Read, siteId: string, roundId: string): Promise<ValvesOfKit> {
  const round = await read.round.findFirst({
    where: { id: roundId, siteId },
    select: { name: true, stops: { orderBy: { position: 'asc' }, select: { valve: { select: valveParts } } } },
  })
  if (!round) throw new Refusal('round/unknown', roundId)
  const bands = bandsOf(await siteSettings(read, siteId))
  const likely = round.stops.filter(
    ({ valve: { state } }) => state !== null && ['book', 'spent'].includes(standingOfRow(state, bands)),
  )
  return { title: `Kit for the round ${round.name}`, valves: likely.map(({ valve }) => asKitValve(valve)), outageId: null }
}

function asKitValve({ id, tag, state }: { id: string; tag: string; state: { packedAt: Date | null } | null }): KitValve {
  return { valveId: id, tag, packedAt: state?.packedAt ?? null }
}
