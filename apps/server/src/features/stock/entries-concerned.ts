import type { FieldEvent } from '@glandkeeper/contract/events'
import type { EventModel } from '../../generated/sqlite/models.ts'
import type { Write } from '../../platform/store.ts'

type FromStore = NonNullable<Extract<FieldEvent, { kind: 'ring.added' }>['fromStore']>
type CorrectionSaid = Extract<FieldEvent, { kind: 'fact.corrected' }>

/** An entry as its corrections leave it: who speaks for it now, and what it says to have been taken from the store. */
export interface EntryAsItStands {
  readonly valveId: string
  /** The entry itself, or the latest of its corrections; and when that was taken. */
  readonly spokenBy: string
  readonly spokenAt: Date
  /** The entry and its corrections that no longer hold. */
  readonly others: readonly string[]
  /** When the work was done. */
  readonly takenAt: Date
  readonly fromStore: FromStore
  /** The one of the entries accepted just now that made it so. */
  readonly arrivedWith: string
}

/** Entries whose uses of the store may have changed with those accepted just now. */
export async function entriesConcerned(write: Write, siteId: string, events: readonly FieldEvent[]): Promise<EntryAsItStands[]> {
  const valveIds = [...new Set(events.map(({ valveId }) => valveId))]
  const corrections = await write.event.findMany({ where: { siteId, kind: 'fact.corrected', valveId: { in: valveIds } } })
  const ofEntry = new Map<string, Spoken[]>()
  for (const row of corrections) {
    const said = JSON.parse(row.body) as CorrectionSaid
    ofEntry.set(said.corrects, [...(ofEntry.get(said.corrects) ?? []), { row, said }])
  }
  const arrivedWith = new Map(
    events.flatMap((event): [string, string][] => {
      if (event.kind === 'fact.corrected') return [[event.corrects, event.id]]
      return ofEntry.has(event.id) || fromStoreOf(event).length > 0 ? [[event.id, event.id]] : []
    }),
  )
  if (arrivedWith.size === 0) return []
  // A correction of an entry that has not arrived, of another valve's or of another correction changes nothing.
  const entries = await write.event.findMany({
    where: { siteId, valveId: { in: valveIds }, id: { in: [...arrivedWith.keys()] }, kind: { not: 'fact.corrected' } },
  })
  return entries.map((row) => {
    const own = (ofEntry.get(row.id) ?? []).filter((correction) => correction.row.valveId === row.valveId)
    return asItStands(row, own.toSorted(byTimeThenId), arrivedWith.get(row.id) ?? row.id)
  })
}

interface Spoken {
  readonly row: EventModel
  readonly said: CorrectionSaid
}

function asItStands(entry: EventModel, corrections: readonly Spoken[], arrivedWith: string): EntryAsItStands {
  const { id, valveId, takenAt } = entry
  const latest = corrections.at(-1)
  if (!latest) {
    const fromStore = fromStoreOf(JSON.parse(entry.body) as FieldEvent)
    return { valveId, spokenBy: id, spokenAt: takenAt, others: [], takenAt, fromStore, arrivedWith }
  }
  const { replacement } = latest.said
  return {
    valveId,
    spokenBy: latest.row.id,
    spokenAt: latest.row.takenAt,
    others: [id, ...corrections.slice(0, -1).map(({ row }) => row.id)],
    takenAt: replacement === null ? takenAt : new Date(replacement.takenAt),
    fromStore: replacement === null ? [] : fromStoreOf(replacement),
    arrivedWith,
  }
}

function fromStoreOf(said: FieldEvent | NonNullable<CorrectionSaid['replacement']>): FromStore {
  return (said.kind === 'packing.renewed' || said.kind === 'ring.added' ? said.fromStore : undefined) ?? []
}

/** As the glands' own corrections are ordered: of several the latest holds. */
function byTimeThenId({ row: one }: Spoken, { row: other }: Spoken): number {
  return one.takenAt.getTime() - other.takenAt.getTime() || (one.id < other.id ? -1 : 1)
}
