import type { BodyOf } from '@glandkeeper/contract/endpoint'
import type { moveRepack } from '@glandkeeper/contract/repack-pins'
import type { Objective } from '@glandkeeper/contract/repack-plans'
import type { PlannedRepackModel, RepackPlanModel } from '../../generated/sqlite/models.ts'
import type { SignedIn } from '../../platform/auth.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Read, Write } from '../../platform/store.ts'
import { type Candidate, repackCandidates } from './candidates.ts'
import type { PlanSlot } from './plan-slots.ts'
import { slotCalled } from './slots.ts'
import { reaches } from './read-repack-input.ts'
import { putRepackPin } from './repack-pins.ts'
import { repackPlanOf, summaryOf } from './present-repack-plan.ts'
import { costFrame, figuresColumns, type SlotFigures, slotFigures } from './slot-figures.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

/** What a move comes to: read and reckoned before the write. */
export interface RepackMove {
  readonly plan: RepackPlanModel
  readonly slot: PlanSlot | null
  readonly rows: readonly { readonly row: PlannedRepackModel; readonly valve: Candidate; readonly figures: SlotFigures }[]
}

/** All valves of the boundary of one, in another slot; refused where they cannot be there. */
export async function readMove(
  read: Read,
  siteId: string,
  planId: string,
  { tag, slotId }: BodyOf<typeof moveRepack>,
  now: Date,
): Promise<RepackMove> {
  const plan = await repackPlanOf(read, siteId, planId)
  const own = await read.plannedRepack.findFirst({ where: { planId, valve: { tag } } })
  if (!own) throw new Refusal('repack/not-in-plan', tag)
  const { slots } = summaryOf(plan)
  const slot = slotId === null ? null : slots.find((one) => one.slotId === slotId)
  if (slot === undefined) throw new Refusal('repack/no-such-slot', slotId ?? '')
  const rows = await read.plannedRepack.findMany({
    where: { planId, boundary: own.boundary },
    orderBy: { valve: { tag: 'asc' } },
  })
  const objective = plan.objective as Objective
  const costs = await costFrame(read, { ...plan, objective }, now)
  const valves = await repackCandidates(
    read,
    siteId,
    { now, endsAt: costs.waitsUntil, settings: costs.settings },
    rows.map(({ valveId }) => valveId),
  )
  if (slot) refuseImpossible(slot, valves)
  return {
    plan,
    slot,
    rows: rows.flatMap((row) => {
      const valve = valves.find(({ valveId }) => valveId === row.valveId)
      return valve ? [{ row, valve, figures: slotFigures(valve, slot, costs) }] : []
    }),
  }
}

function refuseImpossible(slot: PlanSlot, valves: readonly Candidate[]): void {
  const offLineOnly = valves.find(({ isolatesOnLine }) => !isolatesOnLine)
  if (slot.kind === 'fortnight' && offLineOnly)
    throw new Refusal('repack/cannot-be-there', `${offLineOnly.tag} cannot be isolated while the plant runs`)
  if (!reaches(slot, valves)) throw new Refusal('repack/cannot-be-there', `${slot.name} does not reach its area`)
}

const trades = [
  ['fitting', 'fittingHours'],
  ['scaffolding', 'scaffoldingHours'],
  ['isolating', 'isolatingHours'],
] as const

/** @returns tags of what was moved */
export async function writeMove(write: Write, by: By, { plan, slot, rows }: RepackMove, now: Date): Promise<string[]> {
  if (slot)
    await refuseFull(
      write,
      plan.id,
      slot,
      rows.map(({ row }) => row),
    )
  for (const { row, figures } of rows) {
    await write.plannedRepack.update({
      where: { planId_valveId: { planId: plan.id, valveId: row.valveId } },
      data: {
        slotId: slot?.slotId ?? null,
        reason: 'pinned',
        blockedBy: null,
        runnerUp: null,
        ...figuresColumns(figures),
      },
    })
    if (slot) await putRepackPin(write, by, { valveId: row.valveId, slotId: slot.slotId, kind: 'in' }, now)
    else await write.repackPin.deleteMany({ where: { siteId: by.siteId, valveId: row.valveId, kind: 'in' } })
  }
  const tags = rows.map(({ valve }) => valve.tag)
  await noteChange(
    write,
    by,
    {
      subject: 'repack plan',
      subjectId: plan.id,
      what: 'repacks moved',
      before: { slot: await slotCalled(write, rows[0]?.row.slotId ?? null) },
      after: { slot: await slotCalled(write, slot?.slotId ?? null), tags: tags.join(', ') },
    },
    now,
  )
  return tags
}

/** No slot is planned beyond its hours, by nobody. */
async function refuseFull(write: Write, planId: string, slot: PlanSlot, rows: readonly PlannedRepackModel[]): Promise<void> {
  const { _sum } = await write.plannedRepack.aggregate({
    where: { planId, slotId: slot.slotId, valveId: { notIn: rows.map(({ valveId }) => valveId) } },
    _sum: { fittingHours: true, scaffoldingHours: true, isolatingHours: true },
  })
  for (const [trade, column] of trades) {
    const wanted = rows.reduce((sum, row) => sum + row[column], 0)
    const left = slot.hours[trade] - (_sum[column] ?? 0)
    if (wanted > left + 1e-6)
      throw new Refusal(
        'repack/cannot-be-there',
        `${wanted.toFixed(1)} h of ${trade} are needed and ${Math.max(0, left).toFixed(1)} h left`,
      )
  }
}
