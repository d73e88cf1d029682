import type { RepackPlan } from '@glandkeeper/contract/repack-plans'
import { assessPlacement } from '@glandkeeper/engines/schedule/repack-plan/assess'
import { sumOfCosts } from '@glandkeeper/engines/schedule/repack-plan/slot-cost'
import { planRepacks } from '@glandkeeper/engines/schedule/repack-plan/plan'
import type { SolveMilp } from '@glandkeeper/engines/schedule/assignment/milp'
import type { SearchWatch } from '@glandkeeper/engines/schedule/round-plan/crew-plan'
import { inPortions, type Portion } from '../../platform/portions.ts'
import type { Read } from '../../platform/store.ts'
import { type Boundary, hoursOfEach } from './candidates.ts'
import type { PlanSlot } from './plan-slots.ts'
import { readRepackInput, type RepackRequest, type RepackToPlan } from './read-repack-input.ts'
import { figuresColumns, type SlotFigures, slotFigures } from './slot-figures.ts'
import { hoursColumns } from './trade-hours.ts'

type Totals = RepackPlan['totals']

/** What of a plan is kept beside its rows. */
export interface RepackSummary {
  readonly whatIf: RepackRequest['whatIf']
  readonly basedOn: string | null
  readonly slots: readonly PlanSlot[]
  readonly bound: number
  readonly greedyCost: number
  readonly isCutShort: boolean
  readonly infeasiblePins: readonly { readonly tags: readonly string[]; readonly slotId: string; readonly why: string }[]
  readonly stock: RepackPlan['stock']
  readonly ifKept: { readonly totals: Totals; readonly overHours: readonly string[]; readonly short: readonly string[] } | null
}

/** A row of planned_repack, but for its plan. */
export interface RepackRow {
  readonly valveId: string
  readonly areaId: string
  readonly boundary: string
  readonly slotId: string | null
  readonly reason: string
  readonly blockedBy: string | null
  readonly runnerUp: string | null
  readonly chanceOut: number
  readonly expectedLeaks: number
  readonly cost: number
  readonly runningCost: number
  readonly leakCost: number
  readonly wasteCost: number
  readonly ifKept: string | null
  readonly fittingHours: number
  readonly scaffoldingHours: number
  readonly isolatingHours: number
  readonly needs: string | null
}

export interface MadeRepackPlan {
  readonly summary: RepackSummary
  readonly rows: readonly Portion<RepackRow>[]
}

export interface RepackLimits {
  readonly solve: SolveMilp
  readonly seconds: number
  readonly relativeGap: number
}

/** Reads the register and plans. A plan of what is known, or the sentence that says why there is none. */
export async function makeRepackPlan(
  read: Read,
  request: RepackRequest,
  { now, limits, watch }: { readonly now: Date; readonly limits: RepackLimits; readonly watch: SearchWatch },
): Promise<MadeRepackPlan | { readonly fault: string }> {
  const known = await readRepackInput(read, request, now)
  const plan = planRepacks(known.input, limits, watch)
  if (!plan.ok) return { fault: plan.problem.detail }
  const placement = await placementOf(read, request, known)
  const kept = placement && figuresIfKept(known, placement)
  const tagsOf = new Map(known.boundaries.map(({ id, valves }) => [id, valves.map(({ tag }) => tag)]))
  const byBoundary = new Map(plan.placed.map((placed) => [placed.boundaryId, placed]))
  return {
    summary: {
      whatIf: request.whatIf,
      basedOn: request.basedOn,
      slots: known.slots,
      bound: plan.bound,
      greedyCost: plan.greedyCost,
      isCutShort: plan.isCutShort,
      infeasiblePins: [...plan.infeasiblePins, ...known.clashes].map(({ boundaryId, slotId, why }) => ({
        tags: tagsOf.get(boundaryId) ?? [],
        slotId,
        why,
      })),
      stock: stockShown(known, plan.stock),
      ifKept: placement && kept && ifKeptShown(known, placement, kept),
    },
    rows: inPortions(
      known.boundaries.flatMap((boundary) => {
        const placed = byBoundary.get(boundary.id)
        return placed ? rowsOf(known, boundary, placed, kept) : []
      }),
    ),
  }
}

type Placed = Extract<ReturnType<typeof planRepacks>, { ok: true }>['placed'][number]
/** By boundary the slot that the plan before has it in; null is waiting. */
type Placement = ReadonlyMap<string, string | null>
/** By valve what it is in for if the plan before is kept. */
type Kept = ReadonlyMap<string, SlotFigures & { readonly slotId: string | null }>

function rowsOf(known: RepackToPlan, boundary: Boundary, placed: Placed, kept: Kept | null): RepackRow[] {
  const slot = slotNamed(known, placed.slotId)
  const hours = hoursOfEach(boundary)
  return boundary.valves.map((valve) => {
    const need = known.needs.get(valve.valveId)
    return {
      valveId: valve.valveId,
      areaId: valve.areaId,
      boundary: boundary.id,
      slotId: placed.slotId,
      reason: placed.reason,
      blockedBy: placed.blockedBy && nameOf(known, placed.blockedBy),
      runnerUp: placed.runnerUp && JSON.stringify(placed.runnerUp),
      ...figuresColumns(slotFigures(valve, slot, known.costs)),
      ifKept: kept && ifKeptOf(kept, valve.valveId),
      ...hoursColumns(hours),
      needs: need ? JSON.stringify(need) : null,
    }
  })
}

function ifKeptOf(kept: Kept, valveId: string): string | null {
  const figures = kept.get(valveId)
  return figures
    ? JSON.stringify({ slotId: figures.slotId, chanceOut: figures.chanceOut, expectedLeaks: figures.expectedLeaks })
    : null
}

function slotNamed({ slots }: RepackToPlan, slotId: string | null): PlanSlot | null {
  return slots.find((slot) => slot.slotId === slotId) ?? null
}

/** The plan before, as far as it goes: a slot that is gone under what is asked leaves its valves waiting. */
async function placementOf(read: Read, { basedOn }: RepackRequest, known: RepackToPlan): Promise<Placement | null> {
  if (basedOn === null) return null
  const rows = await read.plannedRepack.findMany({ where: { planId: basedOn }, select: { valveId: true, slotId: true } })
  const slotOf = new Map(rows.map(({ valveId, slotId }) => [valveId, slotId]))
  return new Map(
    known.boundaries.map(({ id, valves }) => {
      const planned = valves.find(({ valveId }) => slotOf.has(valveId))
      const slotId = (planned && slotOf.get(planned.valveId)) ?? null
      return [id, slotNamed(known, slotId)?.slotId ?? null]
    }),
  )
}

function figuresIfKept(known: RepackToPlan, placement: Placement): Kept {
  return new Map(
    known.boundaries.flatMap(({ id, valves }) => {
      const slot = slotNamed(known, placement.get(id) ?? null)
      return valves.map(
        (valve) => [valve.valveId, { ...slotFigures(valve, slot, known.costs), slotId: slot?.slotId ?? null }] as const,
      )
    }),
  )
}

function ifKeptShown(known: RepackToPlan, placement: Placement, kept: Kept): NonNullable<RepackSummary['ifKept']> {
  const figures = [...kept.values()]
  const assessed = assessPlacement(known.input, placement)
  return {
    totals: totalsOf(figures, figures.filter(({ slotId }) => slotId === null).length),
    overHours: assessed.ok ? assessed.overHours.map(({ slotId }) => slotId) : [],
    short: assessed.ok ? [...new Set(assessed.stockShort.map(({ itemId }) => nameOf(known, itemId)))] : [],
  }
}

function totalsOf(figures: readonly SlotFigures[], waits: number): Totals {
  const sum = (of: (one: SlotFigures) => number) => figures.reduce((total, one) => total + of(one), 0)
  const { chance: running, leaks, waste, total } = sumOfCosts(figures.map(({ cost }) => cost))
  return {
    valves: figures.length,
    repacks: figures.length - waits,
    waits,
    expectedOut: sum(({ chanceOut }) => chanceOut),
    expectedLeaks: sum(({ expectedLeaks }) => expectedLeaks),
    cost: { running, leaks, waste, total },
  } as Totals
}

/** Of an item of the store; a trade is its own name. */
function nameOf({ limits }: RepackToPlan, id: string): string {
  return limits.find(({ itemId }) => itemId === id)?.name ?? id
}

type StockUsed = Extract<ReturnType<typeof planRepacks>, { ok: true }>['stock']

/** Used to this share of what there is, stock is worth a word. */
const NEARLY_ALL = 0.9

/** Limits, in the order they were given to the engine, of which the plan uses nearly all. */
function stockShown({ limits }: RepackToPlan, used: StockUsed): RepackPlan['stock'] {
  const shown = limits.map(({ itemId, name, unit, beforeOn, amount }, index) => ({
    itemId,
    name,
    unit,
    before: beforeOn,
    amount,
    used: used[index]?.used ?? 0,
  }))
  return shown.filter((limit) => limit.used > 0 && limit.used >= NEARLY_ALL * limit.amount) as RepackPlan['stock']
}
