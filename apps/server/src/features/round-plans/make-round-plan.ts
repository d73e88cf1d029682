import type { VisitCause } from '@glandkeeper/contract/round-plans'
import type { SearchWatch } from '@glandkeeper/engines/schedule/round-plan/crew-plan'
import { planRounds, type RoundPlan } from '@glandkeeper/engines/schedule/round-plan/plan'
import { inPortions, type Portion } from '../../platform/portions.ts'
import type { Read } from '../../platform/store.ts'
import { type PlanRequest, type PlanToMake, readPlanInput, type VisitAbout } from './read-plan-input.ts'

/** What of a plan is kept beside its visits. */
export type PlanSummary = Omit<RoundPlan, 'visits' | 'impossible' | 'crewWeeks'> &
  Pick<PlanToMake, 'crews' | 'areas' | 'basedOn' | 'pins'>

/** A row of planned_visit, but for its plan. */
export interface VisitRow {
  readonly valveId: string
  readonly number: number
  readonly areaId: string
  readonly crewId: string | null
  readonly week: number | null
  readonly wasWeek: number | null
  readonly dueWeek: number
  readonly earliest: number
  readonly latest: number
  readonly minutes: number
  readonly cause: VisitCause
  readonly reason: string
}

export interface MadePlan {
  readonly summary: PlanSummary
  readonly visits: readonly Portion<VisitRow>[]
}

/** Reads the register and plans. A plan of what is known, or the sentence that says why there is none. */
export async function makeRoundPlan(
  read: Read,
  request: PlanRequest,
  watch: SearchWatch,
): Promise<MadePlan | { readonly fault: string }> {
  const { input, about, ...kept } = await readPlanInput(read, request)
  const plan = planRounds(input, watch)
  if (!plan.ok) return { fault: plan.problem.detail }
  const { visits, impossible, crewWeeks: _, ...totals } = plan
  const placed = new Map(visits.map((visit) => [visit.visitId, visit]))
  const nowhere = new Map(impossible.map(({ visitId, reason }) => [visitId, reason]))
  return {
    summary: { ...totals, ...kept },
    visits: inPortions(
      input.visits.map((visit): VisitRow => {
        const known = about.get(visit.id) as VisitAbout
        const there = placed.get(visit.id)
        return {
          ...known,
          crewId: there?.crewId ?? null,
          week: there?.week ?? null,
          dueWeek: visit.due,
          earliest: visit.earliest,
          latest: visit.latest,
          reason: there?.reason ?? nowhere.get(visit.id) ?? 'its window is over',
        }
      }),
    ),
  }
}
