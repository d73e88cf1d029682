import type { FieldEvent } from '@glandkeeper/contract/events'
import type { LeakHistory } from '@glandkeeper/contract/leaks'
import type { Leak } from '@glandkeeper/engines/leak/leaks'
import type { EventModel } from '../../generated/sqlite/models.ts'
import { entriesAsTheyStand, entryInWords, type Said } from '../glands/index.ts'

type Step = LeakHistory['leaks'][number]['steps'][number]
type Row = EventModel & { readonly person: { readonly name: string; readonly crew: { readonly name: string } | null } }

/** An entry as it stands today, in words, with who made it. */
export interface ToldEntry {
  readonly said: Said
  readonly at: Date
  readonly says: string
  readonly by: string
  readonly crew: string | null
}

export function entriesTold(rows: readonly Row[]): ReadonlyMap<string, ToldEntry> {
  return new Map(
    entriesAsTheyStand(rows).map(({ row, said, takenAt }) => {
      const takenBy = 'takenBy' in said ? said.takenBy : (JSON.parse(row.body) as FieldEvent).takenBy
      const entry: ToldEntry = {
        said,
        at: takenAt,
        says: entryInWords(said as FieldEvent),
        by: takenBy ?? row.person.name,
        crew: takenBy === undefined ? (row.person.crew?.name ?? null) : null,
      }
      return [row.id, entry]
    }),
  )
}

/** What was seen and done of one leak, in the order it happened; a nip that looked before and after is one step. */
export function stepsOf(leak: Leak, told: ReadonlyMap<string, ToldEntry>): Step[] {
  const what = new Map<string, Step['what']>()
  const cameBack = new Set(leak.reopenedAt.map(Number))
  for (const look of leak.looks) {
    if (look.leaks) what.set(look.factId, cameBack.has(Number(look.at)) ? 'came back' : 'seen')
    else if (!what.has(look.factId)) what.set(look.factId, 'seen without a leak')
  }
  for (const { factId } of leak.attempts) what.set(factId, 'attempt')
  if (leak.deferred) what.set(leak.deferred.factId, 'put off')
  return [...what]
    .flatMap(([entryId, kind]) => {
      const entry = told.get(entryId)
      return entry ? [{ entryId, at: entry.at.toISOString(), what: kind, says: entry.says, by: entry.by }] : []
    })
    .toSorted((one, other) => (one.at < other.at ? -1 : one.at > other.at ? 1 : 0))
}
