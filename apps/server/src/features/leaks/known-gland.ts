import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'
import { glandCourse, leaksOfGland } from '../glands/index.ts'
import { siteFamilies } from '../packings/index.ts'
import { entriesTold } from './leak-steps.ts'

/** A valve with its entries, and the leaks they make. */
export async function knownGland(read: Read, siteId: string, tag: string) {
  const found = await read.valve.findUnique({
    where: { siteId_tag: { siteId, tag } },
    include: { monitoring: { select: { judgedFrom: true } }, area: true, site: { select: { name: true, timeZone: true } } },
  })
  if (!found) throw new Refusal('valve/unknown', tag)
  const { monitoring, area, site, ...valve } = found
  const [rows, families] = await Promise.all([
    read.event.findMany({
      where: { siteId, valveId: valve.id },
      include: { person: { select: { name: true, crew: { select: { name: true } } } } },
    }),
    siteFamilies(read, siteId),
  ])
  const { standing, history } = glandCourse(valve, rows)
  const judgedFrom = monitoring?.judgedFrom ?? null
  const leaks = leaksOfGland(standing, judgedFrom)
  return { valve, area, site, families, standing, history, judgedFrom, leaks, told: entriesTold(rows) }
}

export type KnownGland = Awaited<ReturnType<typeof knownGland>>
