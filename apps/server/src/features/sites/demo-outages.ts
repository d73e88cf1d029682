import { OutageInput } from '@glandkeeper/contract/outages'
import { plantOutages } from '@glandkeeper/fixtures/demo-plant/outages'
import type { SignedIn } from '../../platform/auth.ts'
import { daysAfter } from '../../platform/local-time.ts'
import type { Write } from '../../platform/store.ts'
import { addOutageOf, endOutageOf } from '../outages/index.ts'

/** Outages of the demo plant about today: one that is over, and three to plan for. */
export async function putDemoOutages(
  write: Write,
  by: Pick<SignedIn, 'siteId' | 'personId'>,
  { today, now }: { readonly today: string; readonly now: Date },
): Promise<void> {
  for (const { name, startsIn, days, hours, areaCodes, isOver } of plantOutages) {
    const dayAfter = (count: number) => daysAfter(today, count)
    const startedOn = dayAfter(startsIn.likely)
    const fields = OutageInput.parse({
      name,
      earliestOn: dayAfter(startsIn.earliest),
      likelyOn: startedOn,
      latestOn: dayAfter(startsIn.latest),
      days,
      hours,
      areaCodes: [...areaCodes],
    })
    const outageId = await addOutageOf(write, by, fields, now)
    const endedOn = daysAfter(startedOn, days - 1)
    if (isOver) await endOutageOf(write, by, { outageId, revision: 1, startedOn, endedOn }, now)
  }
}
