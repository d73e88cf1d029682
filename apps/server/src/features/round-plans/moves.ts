import type { OkOf } from '@glandkeeper/contract/endpoint'
import type { PlanMove, showMoves } from '@glandkeeper/contract/round-plans'
import type { RoundPlanModel } from '../../generated/sqlite/models.ts'
import type { Read } from '../../platform/store.ts'
import { mondayAfter } from './weeks.ts'

const TAGS_NAMED = 5

/** What a plan moves against the one it was made from, by area and weeks; new visits and what is in no week with it. */
export async function movesOf(read: Read, plan: RoundPlanModel): Promise<OkOf<typeof showMoves>> {
  const rows = await read.plannedVisit.findMany({
    where: { planId: plan.id, wasWeek: { not: null } },
    orderBy: [{ areaId: 'asc' }, { week: 'asc' }, { valveId: 'asc' }],
    select: { week: true, wasWeek: true, reason: true, valve: { select: { tag: true, area: { select: { code: true } } } } },
  })
  const moves = new Map<string, PlanMove>()
  let same = 0
  for (const { week, wasWeek, reason, valve } of rows) {
    if (week === wasWeek) {
      same += 1
      continue
    }
    const key = `${valve.area.code} ${wasWeek} ${week}`
    const move = moves.get(key) ?? {
      areaCode: valve.area.code,
      from: wasWeek === null ? null : mondayAfter(plan.startsOn, wasWeek),
      to: week === null ? null : mondayAfter(plan.startsOn, week),
      visits: 0,
      tags: [],
      reason,
    }
    const tags = move.tags.length < TAGS_NAMED ? [...move.tags, valve.tag] : move.tags
    moves.set(key, { ...move, visits: move.visits + 1, tags })
  }
  return { moves: [...moves.values()].toSorted((one, other) => other.visits - one.visits), same, isFirst: rows.length === 0 }
}
