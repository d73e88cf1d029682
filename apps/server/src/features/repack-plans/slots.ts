export const slotOfOutage = (outageId: string) => `outage:${outageId}`
export const slotOfFortnight = (monday: string) => `fortnight:${monday}`

/** The outage of a slot; null for a fortnight. */
export function outageOfSlot(slotId: string): string | null {
  return slotId.startsWith('outage:') ? slotId.slice('outage:'.length) : null
}
