import { setTimeout as wait } from 'node:timers/promises'
import { sendEvents } from '@glandkeeper/contract/events'
import type { QueryOf } from '@glandkeeper/contract/endpoint'
import {
  listRepackPlans,
  makeRepackPlan,
  type RepackPlan,
  showRepackPlan,
  showRepackPlanning,
} from '@glandkeeper/contract/repack-plans'
import { listPlannedRepacks } from '@glandkeeper/contract/planned-repacks'
import { addValve } from '@glandkeeper/contract/valves'
import { aReading, aRepack } from '@glandkeeper/fixtures/a-reading'
import { aValve, type ValveOverrides } from '@glandkeeper/fixtures/a-valve'
import { makeRepackPlan as planRepacksOf } from '../src/features/repack-plans/make-repack-plan.ts'
import { writeRepackPlan } from '../src/features/repack-plans/write-repack-plan.ts'
import { loadSolver } from '../src/platform/highs-solver.ts'
import { aServer } from './a-server.ts'

/** An outage of a week whose first day is settled. */
export const aStop = (name: string, likelyOn: string, more: object = {}) => ({
  name,
  earliestOn: likelyOn,
  likelyOn,
  latestOn: likelyOn,
  days: 7,
  hours: { fitting: 40, scaffolding: 8, isolating: 12 },
  areaCodes: [],
  ...more,
})

const PUMP = { isolationBoundary: 'Feed pump 1', isolatesOnLine: false }
const BY_ITSELF = { isolationBoundary: '' }

/** BH-1 and BH-2 are isolated together, in an outage only; BH-3 to BH-5 while the plant runs; BH-6 in an outage. */
const valves: readonly ValveOverrides[] = [
  PUMP,
  PUMP,
  { ...BY_ITSELF, isolatesOnLine: true },
  { ...BY_ITSELF, isolatesOnLine: true },
  { ...BY_ITSELF, isolatesOnLine: true },
  { ...BY_ITSELF, isolatesOnLine: false },
]

const usualQuestion = { name: 'A plan', weeks: 52, objective: 'chance' as const, whatIf: null, basedOn: null }
let solver: ReturnType<typeof loadSolver> | null = null

/** Six valves that are used up within the year, each a little sooner than the one before; it is Monday 4 May 2026. */
export async function aPlantToRepack() {
  let now = new Date('2026-05-04T09:00:00Z')
  const server = await aServer({ clock: () => now })
  const enter = (...events: unknown[]) => server.expectOk('fitter', sendEvents, { body: { events } })
  const ids: string[] = []
  for (const [index, more] of valves.entries()) {
    const body = aValve({ tag: `BH-${index + 1}`, areaCode: 'BH', criticality: 'high', ...more })
    const { valveId } = await server.expectOk('planner', addValve, { body })
    ids.push(valveId)
    const gaps = [14, 12.2, 10.6, 9.2, 8 - index * 0.5]
    await enter(
      aRepack({ valveId, takenAt: '2025-06-05T09:00:00Z', gapLeft: 16, gapRight: 16 }),
      ...gaps.map((gap, nth) =>
        aReading({ valveId, takenAt: new Date(Date.UTC(2025, 7 + nth * 2, 5, 9)).toISOString(), gapLeft: gap, gapRight: gap }),
      ),
    )
  }
  const newest = async (): Promise<RepackPlan> => {
    const { plans } = await server.expectOk('planner', listRepackPlans)
    return server.expectOk('planner', showRepackPlan, { params: { planId: plans[0]?.planId ?? '' } })
  }
  /** As a planner asks for it: the server plans in its thread. */
  const planInThread = async (more: object = {}) => {
    await server.expectOk('planner', makeRepackPlan, { body: { ...usualQuestion, ...more } })
    await planned(server)
    return newest()
  }
  /** The same without a thread, which takes longer to start than the plan of six valves. */
  const plan = async (more: object = {}) => {
    const asked = { ...usualQuestion, ...more }
    const { siteId, personIds, store } = server
    const request = { siteId, startsOn: now.toISOString().slice(0, 10), ...asked }
    solver ??= loadSolver()
    const limits = { solve: await solver, seconds: 10, relativeGap: 0.0005 }
    const made = await planRepacksOf(store.read, request, { now, limits, watch: {} })
    if ('fault' in made) throw new Error(made.fault)
    await writeRepackPlan(store, { siteId, personId: personIds.planner }, { ...request, made, at: now }, () => false)
    return newest()
  }
  const repacks = async (planId: string, query: Partial<QueryOf<typeof listPlannedRepacks>> = {}) => {
    const listed = await server.expectOk('planner', listPlannedRepacks, { params: { planId }, query: query as never })
    return listed.repacks.toSorted((one, other) => (one.tag < other.tag ? -1 : 1))
  }
  return { ...server, ids, enter, plan, planInThread, repacks, setNow: (moment: string) => (now = new Date(moment)) }
}

/** Waits until nothing is planned any more. @throws the fault that ended it */
export async function planned({ expectOk }: Pick<Awaited<ReturnType<typeof aServer>>, 'expectOk'>): Promise<void> {
  for (;;) {
    const { share, fault } = await expectOk('planner', showRepackPlanning)
    if (fault !== null) throw new Error(fault)
    if (share === null) return
    await wait(20)
  }
}
