import type { LeakHistory } from '@glandkeeper/contract/leaks'
import { leakExposure } from '@glandkeeper/engines/leak/leak-exposure'
import { instant } from '@glandkeeper/units/quantity'
import type { Read } from '../../platform/store.ts'
import { leakRows } from '../glands/index.ts'
import { beforeLeak } from './before-leak.ts'
import { type KnownGland, knownGland } from './known-gland.ts'
import { stepsOf } from './leak-steps.ts'
import { presentLeak } from './present-leak.ts'

/** Every leak of one valve: how it went, and what changed before it. Made from the entries, not from what is kept. */
export async function leakHistory(read: Read, siteId: string, tag: string, now: Date): Promise<LeakHistory> {
  return historyOf(await knownGland(read, siteId, tag), now)
}

export function historyOf(known: KnownGland, now: Date): LeakHistory {
  const { valve, standing, leaks, judgedFrom, told } = known
  const exposure = leakExposure({ facts: standing, leaks, from: instant(0), to: instant(now.getTime()) })
  const shown = {
    leaks: leakRows(valve, standing, judgedFrom).flatMap((row, place) => {
      const leak = leaks[place]
      return leak ? [{ ...presentLeak(row), steps: stepsOf(leak, told), before: beforeLeak({ ...known, leak }) }] : []
    }),
    watchedSince: standing[0] ? new Date(standing[0].takenAt).toISOString() : null,
    daysWatched: exposure.daysWatched,
    daysLeaking: exposure.daysLeaking,
    nips: exposure.nips,
    nipsPerDryMonth: exposure.nipsPerDryMonth,
    leaksPerThousandMonths: exposure.leaksPerThousandMonths,
  }
  return shown as unknown as LeakHistory
}
