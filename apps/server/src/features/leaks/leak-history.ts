import type { OkIn } from '@glandkeeper/contract/endpoint'
import type { showLeakHistory } from '@glandkeeper/contract/leaks'
import { leakExposure } from '@glandkeeper/engines/leak/leak-exposure'
import { instant } from '@glandkeeper/units/quantity'
import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'
import { glandCourse, leakRows, leaksOfGland } from '../glands/index.ts'
import { siteFamilies } from '../packings/index.ts'
import { beforeLeak } from './before-leak.ts'
import { presentLeak } from './present-leak.ts'
import { entriesTold, stepsOf } from './leak-steps.ts'

type History = OkIn<typeof showLeakHistory>

/** Every leak of one valve: how it went, and what changed before it. Made from the entries, not from what is kept. */
export async function leakHistory(read: Read, siteId: string, tag: string, now: Date): Promise<History> {
  const found = await read.valve.findUnique({
    where: { siteId_tag: { siteId, tag } },
    include: { monitoring: { select: { judgedFrom: true } } },
  })
  if (!found) throw new Refusal('valve/unknown', tag)
  const { monitoring, ...valve } = found
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
  const told = entriesTold(rows)
  const exposure = leakExposure({ facts: standing, leaks, from: instant(0), to: instant(now.getTime()) })
  return {
    leaks: leakRows(valve, standing, judgedFrom).flatMap((row, place) => {
      const leak = leaks[place]
      if (!leak) return []
      const before = beforeLeak({ valve, leaks, leak, history, told, families })
      return [{ ...presentLeak(row), steps: stepsOf(leak, told), before }]
    }),
    watchedSince: standing[0] ? new Date(standing[0].takenAt).toISOString() : null,
    daysWatched: exposure.daysWatched,
    daysLeaking: exposure.daysLeaking,
    nips: exposure.nips,
    nipsPerDryMonth: exposure.nipsPerDryMonth,
    leaksPerThousandMonths: exposure.leaksPerThousandMonths,
  }
}
