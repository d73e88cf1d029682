import type { FieldEvent } from '@glandkeeper/contract/events'

type Fact = Exclude<FieldEvent, { kind: 'fact.corrected' }>

/** Of entries that wait on this device, those that nobody has taken back on it. Corrections themselves are no facts. */
export function stillHolding(waiting: readonly FieldEvent[]): Fact[] {
  const takenBack = new Set(waiting.flatMap((event) => (event.kind === 'fact.corrected' ? [event.corrects] : [])))
  return waiting.filter((event): event is Fact => event.kind !== 'fact.corrected' && !takenBack.has(event.id))
}
