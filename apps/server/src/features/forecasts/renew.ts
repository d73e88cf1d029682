import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Clock } from '../../platform/clock.ts'
import type { Store } from '../../platform/store.ts'
import { forecastBasis, rebuildState } from '../glands/index.ts'

/** So many valves are one transaction: short enough that an entry never waits long for it. */
const PORTION = 3

/** Makes every state of a site again, in portions that let entries and reads through between them. */
export async function renewStates(
  store: Store,
  siteId: string,
  { clock, shouldStop }: { readonly clock: Clock; readonly shouldStop: () => boolean },
): Promise<void> {
  for (let after = ''; !shouldStop();) {
    const valves = await store.read.valve.findMany({
      where: { siteId, retiredAt: null, id: { gt: after } },
      orderBy: { id: 'asc' },
      take: PORTION,
      select: { id: true },
    })
    if (valves.length === 0) return
    await store.write(async (write) => {
      const basis = await forecastBasis(write, siteId, clock())
      for (const { id } of valves) await rebuildState(write, siteId, id, basis)
    })
    after = valves.at(-1)?.id ?? after
    await nextTurn()
  }
}
