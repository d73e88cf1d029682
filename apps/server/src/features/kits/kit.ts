import type { Kit } from '@glandkeeper/contract/kits'
import type { Read } from '../../platform/store.ts'
import { packingNeeds, stockOf } from '../stock/index.ts'
import { issuedFor } from './issued.ts'
import { kitLines } from './kit-lines.ts'
import { needsByValve } from './needs-by-valve.ts'
import { type KitFor, valvesOfKit } from './valves-of-kit.ts'

/** Everything from the store for a valve, an outage of the plan in use, or the likely repacks of a round. */
export async function kitOf(read: Read, siteId: string, kitFor: KitFor, now: Date): Promise<Kit> {
  const { title, valves, outageId } = await valvesOfKit(read, siteId, kitFor)
  const found = await packingNeeds(
    read,
    siteId,
    valves.map(({ valveId }) => valveId),
  )
  const { needs, open } = needsByValve(valves, found)
  const [items, issued] = await Promise.all([
    stockOf(read, siteId, now),
    issuedFor(read, siteId, { valves, outageIds: outageId === null ? [] : [outageId] }),
  ])
  return { title, valves: valves.length, lines: kitLines(needs, items, issued), open }
}
