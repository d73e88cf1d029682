import type { Objective, WhatIf } from '@glandkeeper/contract/repack-plans'
import type { StockItem } from '@glandkeeper/contract/stores'
import type { RepackBoundary, RepackPlanInput, StockLimit } from '@glandkeeper/engines/schedule/repack-plan/input'
import { sumOfCosts } from '@glandkeeper/engines/schedule/repack-plan/slot-cost'
import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays'
import { parseISO } from 'date-fns/parseISO'
import { dayAt, startOfDayAt } from '../../platform/clock.ts'
import { daysAfter } from '../../platform/local-time.ts'
import type { Read } from '../../platform/store.ts'
import { amountOf, itemForNeed, packingNeeds, type PackingNeed, stockLimits, stockOf } from '../stock/index.ts'
import { type Boundary, boundariesOf, type Candidate, repackCandidates } from './candidates.ts'
import { hoursOff } from '../days-off/index.ts'
import { type PinClash, pinsByBoundary } from './pins-by-boundary.ts'
import { type PlanSlot, planSlots } from './plan-slots.ts'
import { repackPins } from './repack-pins.ts'
import { costFrame, type CostFrame, slotFigures } from './slot-figures.ts'

export interface RepackRequest {
  readonly siteId: string
  /** Its first day. */
  readonly startsOn: string
  readonly weeks: number
  readonly objective: Objective
  readonly whatIf: WhatIf | null
  /** A plan whose placement a what-if is held against. */
  readonly basedOn: string | null
}

/** Everything a plan of repacks is made from, as the register has it now. */
export interface RepackToPlan {
  readonly input: RepackPlanInput
  readonly slots: readonly PlanSlot[]
  readonly boundaries: readonly Boundary[]
  readonly needs: ReadonlyMap<string, PackingNeed>
  readonly limits: readonly NamedLimit[]
  readonly clashes: readonly PinClash[]
  readonly costs: CostFrame
}

type NamedLimit = ReturnType<typeof stockLimits>[number]

export async function readRepackInput(read: Read, request: RepackRequest, now: Date): Promise<RepackToPlan> {
  const { siteId, startsOn, weeks, whatIf } = request
  const costs = await costFrame(read, request, now)
  const { timeZone, settings } = costs
  const endsOn = daysAfter(startsOn, weeks * 7)
  const outages = await read.outage.findMany({
    where: { siteId, state: 'planned' },
    orderBy: [{ likelyOn: 'asc' }, { id: 'asc' }],
  })
  const { ofSite: daysOff } = await hoursOff(read, siteId, { from: startsOn, to: endsOn })
  const slots = planSlots({ startsOn, weeks, settings, daysOff, outages, whatIf })
  const candidates = await repackCandidates(read, siteId, { now, endsAt: startOfDayAt(endsOn, timeZone), settings })
  const boundaries = boundariesOf(candidates, settings)
  const stock = await storeFor(read, siteId, candidates, {
    today: dayAt(now, timeZone),
    lateDays: whatIf?.cordLateDays ?? 0,
    now,
  })
  const { pins, clashes } = pinsByBoundary(boundaries, await repackPins(read, siteId), slots)
  return {
    input: {
      slots: slots.map(({ slotId, kind, likelyOn, hours }) => ({
        id: slotId,
        isOutage: kind === 'outage',
        day: dayOf(likelyOn, startsOn),
        hours,
      })),
      boundaries: boundaries.map((boundary) => ({
        ...boundaryToPlan(boundary, slots, costs),
        uses: usesOf(boundary, stock.items, stock.needs),
        pin: pins.get(boundary.id)?.pin ?? null,
        excluded: pins.get(boundary.id)?.excluded ?? [],
      })),
      stockLimits: stock.limits.map(({ itemId, beforeOn, amount }): StockLimit => ({
        itemId,
        beforeDay: dayOf(beforeOn, startsOn),
        amount,
      })),
    },
    slots,
    boundaries,
    needs: stock.needs,
    limits: stock.limits,
    clashes,
    costs,
  }
}

function boundaryToPlan(
  boundary: Boundary,
  slots: readonly PlanSlot[],
  costs: CostFrame,
): Omit<RepackBoundary, 'uses' | 'pin' | 'excluded'> {
  const { id, valves, isolatesOnLine, hours } = boundary
  const inSlot = (slot: PlanSlot | null) => sumOfCosts(valves.map((valve) => slotFigures(valve, slot, costs).cost))
  return {
    id,
    isolatesOnLine,
    hours,
    costs: slots.map(inSlot),
    deferCost: inSlot(null),
    closedSlots: slots.filter((slot) => !reaches(slot, valves)).map(({ slotId }) => slotId),
  }
}

/** An outage of some areas isolates only what lies in them. */
export function reaches({ areaCodes }: PlanSlot, valves: readonly Pick<Candidate, 'areaCode'>[]): boolean {
  return areaCodes.length === 0 || valves.every(({ areaCode }) => areaCodes.includes(areaCode))
}

function dayOf(isoDay: string, startsOn: string): number {
  return differenceInCalendarDays(parseISO(isoDay), parseISO(startsOn))
}

async function storeFor(
  read: Read,
  siteId: string,
  candidates: readonly Candidate[],
  when: { readonly today: string; readonly lateDays: number; readonly now: Date },
) {
  const ids = candidates.map(({ valveId }) => valveId)
  const [found, items] = await Promise.all([packingNeeds(read, siteId, ids), stockOf(read, siteId, when.now)])
  const needs = new Map([...found].flatMap(([id, need]) => ('open' in need ? [] : [[id, need] as const])))
  return { needs, items, limits: stockLimits(items, when.today, when.lateDays) }
}

function usesOf(boundary: Boundary, items: readonly StockItem[], needs: ReadonlyMap<string, PackingNeed>) {
  const used = new Map<string, number>()
  for (const { valveId } of boundary.valves) {
    const need = needs.get(valveId)
    const item = need ? itemForNeed(items, need) : null
    if (need && item) used.set(item.itemId, (used.get(item.itemId) ?? 0) + amountOf(need))
  }
  return [...used].map(([itemId, amount]) => ({ itemId, amount }))
}
