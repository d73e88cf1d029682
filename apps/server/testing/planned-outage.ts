import type { Prisma } from '../src/generated/sqlite/client.ts'
import { newId } from '../src/platform/ids.ts'
import type { TestServer } from './a-server.ts'

export type OutageOverrides = Partial<Omit<Prisma.OutageUncheckedCreateInput, 'id' | 'siteId' | 'createdAt'>>

/** An outage of five days in June, as a row alone; tells its id. */
export async function anOutage({ store, siteId, now }: TestServer, overrides: OutageOverrides = {}): Promise<string> {
  const id = newId()
  await store.write((write) =>
    write.outage.create({
      data: {
        id,
        siteId,
        name: 'Short stop in June',
        earliestOn: '2026-06-02',
        likelyOn: '2026-06-09',
        latestOn: '2026-06-16',
        days: 5,
        fittingHours: 100,
        scaffoldingHours: 40,
        isolatingHours: 30,
        areaCodes: '[]',
        state: 'planned',
        createdAt: now,
        ...overrides,
      },
    }),
  )
  return id
}

/** A plan of repacks in use that has these valves in a slot, each with 2 h of fitting, 1.5 h of isolating; tells its id. */
export async function aPlanInUse(server: TestServer, slotId: string, tags: readonly string[]): Promise<string> {
  const { store, siteId, personIds, now } = server
  const valves = await store.read.valve.findMany({ where: { siteId, tag: { in: [...tags] } } })
  const planId = newId()
  await store.write(async (write) => {
    await write.repackPlan.create({
      data: {
        id: planId,
        siteId,
        name: 'Plan of May',
        madeAt: now,
        madeById: personIds.planner,
        startsOn: '2026-05-04',
        weeks: 52,
        objective: 'chance',
        takenAt: now,
        takenById: personIds.planner,
        summary: '{}',
      },
    })
    await write.plannedRepack.createMany({
      data: valves.map(({ id, areaId, isolationBoundary }) => ({
        planId,
        valveId: id,
        areaId,
        boundary: isolationBoundary === '' ? id : isolationBoundary,
        slotId,
        reason: 'pinned',
        chanceOut: 0.1,
        expectedLeaks: 0.1,
        cost: 1,
        runningCost: 1,
        leakCost: 0,
        wasteCost: 0,
        fittingHours: 2,
        scaffoldingHours: 0,
        isolatingHours: 1.5,
      })),
    })
  })
  return planId
}
