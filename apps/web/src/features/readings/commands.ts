import { FieldEvent, schemaOfKind } from '@glandkeeper/contract/events'
import { unusualQuantities, type Unusual } from '@glandkeeper/contract/quantity'
import { formatISO } from 'date-fns'
import type { z } from 'zod'
import { deviceName, newId } from '../../platform/ids.ts'

/** What makes an entry this one and no other: made once, so that sending it again doubles nothing. */
interface Stamp {
  readonly id: string
  readonly version: 1
  readonly valveId: string
  readonly takenAt: string
  readonly device: string
  readonly takenBy?: string
  readonly note?: string
  readonly photos?: readonly string[]
}

type Without<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never
/** What happened, before it has a name and a time. */
export type Fact = Without<z.input<typeof FieldEvent>, keyof Stamp>

type Built =
  | { readonly ok: true; readonly entries: readonly FieldEvent[] }
  | { readonly ok: false; readonly faults: readonly string[] }

export interface Circumstances {
  readonly valveId: string
  readonly at: Date
  readonly takenBy: string
  readonly note: string
  /** Digests of pictures; they belong to the first entry of the visit. */
  readonly photos?: readonly string[]
}

/** The time carries the offset of this device, so that a site can tell its own clock from the phone's. */
function stampOf({ valveId, at, takenBy, note }: Circumstances): Stamp {
  return {
    id: newId(),
    version: 1,
    valveId,
    takenAt: formatISO(at),
    device: deviceName(),
    ...(takenBy.trim() !== '' && { takenBy }),
    ...(note.trim() !== '' && { note }),
  }
}

/** Entries as the contract has them, all of one visit, or every reason why they cannot be. Ids rise in the order given. */
export function entriesOf(circumstances: Circumstances, facts: readonly Fact[]): Built {
  const photos = circumstances.photos ?? []
  const parsed = facts.map((fact, index) =>
    FieldEvent.safeParse({ ...stampOf(circumstances), ...(index === 0 && photos.length > 0 && { photos }), ...fact }),
  )
  const faults = parsed.flatMap(({ error }) => error?.issues.map(({ message }) => message) ?? [])
  return faults.length > 0 ? { ok: false, faults } : { ok: true, entries: parsed.flatMap(({ data }) => data ?? []) }
}

/** An entry is never removed: taking it back is an entry of its own. */
export function takenBackAtOnce(entry: FieldEvent, at: Date): FieldEvent {
  return correctionOf(entry, { reason: 'taken back at once', replacement: null }, at)
}

interface Correction {
  readonly reason: string
  /** The entry as it should have been; null takes it back. */
  readonly replacement: FieldEvent | null
}

/** An entry that stands beside another and puts it right. Both are kept. Throws where the reason is empty. */
export function correctionOf(
  entry: Pick<FieldEvent, 'id' | 'valveId'>,
  { reason, replacement }: Correction,
  at: Date,
): FieldEvent {
  return FieldEvent.parse({
    ...stampOf({ valveId: entry.valveId, at, takenBy: '', note: '' }),
    kind: 'fact.corrected',
    corrects: entry.id,
    reason,
    replacement: replacement && withoutStamp(replacement),
  })
}

/** What takes the place of an entry has its kind, time and note, and nothing else that made it this entry. */
function withoutStamp(event: FieldEvent): object {
  const { id: _, version: __, valveId: ___, device: ____, takenBy: _____, photos: ______, ...rest } = event
  return rest
}

/** Figures of the entry that are possible but so odd that they are asked about before they are sent. */
export function unusualFigures(entry: FieldEvent): Unusual[] {
  const schema = schemaOfKind(entry.kind)
  return schema ? unusualQuantities(schema, entry) : []
}
