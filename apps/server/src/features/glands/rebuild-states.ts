import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Prisma } from '../../generated/sqlite/client.ts'
import type { Clock } from '../../platform/clock.ts'
import type { Store } from '../../platform/store.ts'
import { forecastBasis } from './forecast-basis.ts'
import { rebuildState } from './state.ts'

/** So many valves are one transaction: short enough that an entry never waits long for it. */
export const VALVES_OF_A_PORTION = 3

interface Run {
  readonly clock: Clock
  readonly shouldStop: () => boolean
}

/** Makes the states of these valves again, in portions that let entries and reads through between them. False when stopped. */
export async function rebuildStates(
  store: Store,
  siteId: string,
  which: Prisma.ValveWhereInput,
  { clock, shouldStop }: Run,
): Promise<boolean> {
  for (let after = ''; !shouldStop();) {
    const valves = await store.read.valve.findMany({
      where: { ...which, siteId, id: { gt: after } },
      orderBy: { id: 'asc' },
      take: VALVES_OF_A_PORTION,
      select: { id: true },
    })
    if (valves.length === 0) return true
    await store.write(async (write) => {
      const basis = await forecastBasis(write, siteId, clock())
      for (const { id } of valves) await rebuildState(write, siteId, id, basis)
    })
    after = valves.at(-1)?.id ?? after
    await nextTurn()
  }
  return false
}
