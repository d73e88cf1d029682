import { groupedBy } from '../../platform/grouped-by.ts'
import type { Boundary } from './candidates.ts'
import type { PlanSlot } from './plan-slots.ts'
import type { PinKept } from './repack-pins.ts'

export interface BoundaryPin {
  readonly pin: { readonly slotId: string } | null
  readonly excluded: readonly string[]
}

/** Pins of valves that are isolated together and say different things. */
export interface PinClash {
  readonly boundaryId: string
  readonly slotId: string
  readonly why: string
}

/** Pins are of valves, and a plan places boundaries: of pins that clash the newest holds, and the other is named. */
export function pinsByBoundary(
  boundaries: readonly Boundary[],
  pins: readonly PinKept[],
  slots: readonly PlanSlot[],
): { readonly pins: ReadonlyMap<string, BoundaryPin>; readonly clashes: readonly PinClash[] } {
  const byValve = groupedBy(pins, ({ valveId }) => valveId)
  const found = new Map<string, BoundaryPin>()
  const clashes: PinClash[] = []
  for (const { id, valves } of boundaries) {
    const own = valves.flatMap((valve) => (byValve.get(valve.valveId) ?? []).map((pin) => ({ ...pin, tag: valve.tag })))
    if (own.length === 0) continue
    const wanted = own.filter(({ kind }) => kind === 'in').toSorted((one, other) => other.madeAt.getTime() - one.madeAt.getTime())
    const [newest] = wanted
    const other = wanted.find(({ slotId }) => slotId !== newest?.slotId)
    if (newest && other) {
      const why = `${other.tag} is isolated together with ${newest.tag}, which was pinned to another slot since`
      clashes.push({ boundaryId: id, slotId: other.slotId, why })
    }
    found.set(id, {
      pin: newest ? { slotId: newest.slotId } : null,
      excluded: own.filter(({ kind, slotId }) => kind === 'not in' && isThere(slots, slotId)).map(({ slotId }) => slotId),
    })
  }
  return { pins: found, clashes }
}

function isThere(slots: readonly PlanSlot[], slotId: string): boolean {
  return slots.some((slot) => slot.slotId === slotId)
}
