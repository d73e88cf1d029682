import type { WalkPlan } from '@glandkeeper/contract/crews'
import type { SettingValues } from '@glandkeeper/contract/settings'
import { metres } from '@glandkeeper/engines/schedule/walking-distance'
import { walkingOrder } from '@glandkeeper/engines/schedule/walking-order'

export interface ValveOnWalk {
  readonly id: string
  readonly level: number
  readonly eastM: number | null
  readonly northM: number | null
}

export interface Walk<Stop> {
  readonly stops: readonly Stop[]
  /** Null where a place has not been measured: then the stops stay as they were given. */
  readonly metres: number | null
  readonly levels: number | null
}

/** Any number: the same stops give the same walk every time. */
const SEED = 1

/** Stops of one area in the order that walks and climbs least, from the way in and back where that is known. */
export function shortestWalk<Stop extends ValveOnWalk>(
  stops: readonly Stop[],
  walkPlan: WalkPlan | null,
  { metresForLevel }: Pick<SettingValues, 'metresForLevel'>,
): Walk<Stop> {
  const places = stops.flatMap(({ eastM, northM, level }) =>
    eastM === null || northM === null ? [] : [{ east: metres(eastM), north: metres(northM), level }],
  )
  const asGiven = { stops, metres: null, levels: null }
  if (places.length < stops.length) return asGiven
  const found = walkingOrder({
    stops: places,
    wayIn: walkPlan?.wayIn ? { ...walkPlan.wayIn, east: metres(walkPlan.wayIn.east), north: metres(walkPlan.wayIn.north) } : null,
    stairs: (walkPlan?.stairs ?? []).map((stairs) => ({ ...stairs, east: metres(stairs.east), north: metres(stairs.north) })),
    levelWorth: metres(metresForLevel),
    seed: SEED,
  })
  // Stairs that reach no level of a stop, say: the round is made all the same, as it was given.
  if (!found.ok) return asGiven
  return { stops: found.order.map((index) => stops[index] as Stop), metres: found.metres, levels: found.levels }
}

/** Minutes on the way, on foot and by stairs. */
export function minutesOnFoot(
  { metres: onFoot, levels }: { readonly metres: number | null; readonly levels: number | null },
  { metresForLevel, metresInAMinute }: Pick<SettingValues, 'metresForLevel' | 'metresInAMinute'>,
): number {
  return ((onFoot ?? 0) + (levels ?? 0) * metresForLevel) / metresInAMinute
}
