import type { Read } from '../../platform/store.ts'

export const slotOfOutage = (outageId: string) => `outage:${outageId}`
export const slotOfFortnight = (monday: string) => `fortnight:${monday}`

/** The outage of a slot; null for a fortnight. */
export function outageOfSlot(slotId: string): string | null {
  return slotId.startsWith('outage:') ? slotId.slice('outage:'.length) : null
}

/** How a note in the log calls a slot, by what it is called now; null for none. */
export async function slotCalled(read: Pick<Read, 'outage'>, slotId: string | null): Promise<string | null> {
  const outageId = slotId === null ? null : outageOfSlot(slotId)
  if (outageId === null) return slotId && `fortnight from ${slotId.slice('fortnight:'.length)}`
  return (await read.outage.findUnique({ where: { id: outageId }, select: { name: true } }))?.name ?? 'an outage that is gone'
}
