import { setImmediate as nextTurn } from 'node:timers/promises'
import type { Ppmv } from '@glandkeeper/units/quantity'
import { dayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { netScreening } from '../glands/index.ts'
import { sightingsWith } from './sightings.ts'

/** A meter held to a valve. */
export interface MeterLook {
  /** As `2026-03-02`, of the site. */
  readonly day: string
  /** Above background. */
  readonly net: Ppmv
}

const PORTION = 400

/** Every look with a meter of these valves as it stands, in order of time. Read in portions that hold nobody up. */
export async function meterLooks(
  read: Read,
  siteId: string,
  { valveIds, from }: { readonly valveIds: readonly string[]; readonly from: Date | null },
  timeZone: string,
): Promise<ReadonlyMap<string, readonly MeterLook[]>> {
  const looks = new Map<string, readonly MeterLook[]>()
  const dayOf = daysOfSite(timeZone)
  for (let first = 0; first < valveIds.length; first += PORTION) {
    const portion = valveIds.slice(first, first + PORTION)
    for (const [valveId, own] of await sightingsWith(read, siteId, portion, ['screeningValue'], from))
      looks.set(
        valveId,
        own.flatMap(({ said, takenAt }) => {
          const net = netScreening(said)
          return net === null ? [] : [{ day: dayOf(takenAt), net }]
        }),
      )
    await nextTurn()
  }
  return looks
}

/** Zones differ by quarters of an hour: all moments of one fall on one day, and rounds have many. */
function daysOfSite(timeZone: string): (moment: Date) => string {
  const known = new Map<number, string>()
  return (moment) => {
    const quarterHour = Math.floor(moment.getTime() / 900_000)
    const day = known.get(quarterHour) ?? dayAt(moment, timeZone)
    known.set(quarterHour, day)
    return day
  }
}
