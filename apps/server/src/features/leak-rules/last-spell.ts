import type { FieldEvent } from '@glandkeeper/contract/events'
import type { Leak } from '@glandkeeper/engines/leak/leaks'
import type { LeakModel } from '../../generated/sqlite/models.ts'
import { groupedBy } from '../../platform/grouped-by.ts'
import type { Read } from '../../platform/store.ts'
import { entriesAsTheyStand, glandCourse, leaksOfGland } from '../glands/index.ts'

/** A leak from the last time it was seen anew: what its clocks run on. */
export interface Spell {
  readonly from: Date
  readonly firstAttemptAt: Date | null
  readonly verifiedAt: Date | null
  readonly deferral: { readonly reason: string; readonly approvedBy: string; readonly until: string | null } | null
}

type Row = LeakModel & { readonly valve: { readonly monitoring: { readonly judgedFrom: number | null } | null } }

const PORTION = 50

/** The last spell of each leak. What is kept says it all of most; those that came back or were put off are read from their entries. */
export async function spellsOf(read: Read, siteId: string, rows: readonly Row[]): Promise<ReadonlyMap<string, Spell>> {
  const spells = new Map<string, Spell>(rows.map((row) => [row.id, keptSpell(row)]))
  const byValve = [...groupedBy(rows.filter(isToldByEntries), ({ valveId }) => valveId)]
  for (let from = 0; from < byValve.length; from += PORTION) {
    const portion = new Map(byValve.slice(from, from + PORTION))
    const ids = [...portion.keys()]
    const [valves, events] = await Promise.all([
      read.valve.findMany({ where: { siteId, id: { in: ids } } }),
      read.event.findMany({
        where: { siteId, valveId: { in: ids } },
        select: { id: true, valveId: true, kind: true, body: true, takenAt: true },
      }),
    ])
    const eventsOf = groupedBy(events, ({ valveId }) => valveId)
    for (const valve of valves) {
      const own = eventsOf.get(valve.id) ?? []
      const judgedFrom = portion.get(valve.id)?.[0]?.valve.monitoring?.judgedFrom ?? null
      const said = new Map(entriesAsTheyStand(own).map((entry) => [entry.row.id, entry.said]))
      for (const leak of leaksOfGland(glandCourse(valve, own).standing, judgedFrom))
        if (spells.has(leak.id)) spells.set(leak.id, lastSpell(leak, said))
    }
  }
  return spells
}

function isToldByEntries({ reopened, deferredAt }: Row): boolean {
  return reopened > 0 || deferredAt !== null
}

function keptSpell({ openedAt, firstAttemptAt, verifiedAt }: Row): Spell {
  return { from: openedAt, firstAttemptAt, verifiedAt, deferral: null }
}

type Said = ReadonlyMap<string, { readonly kind: FieldEvent['kind'] }>

/** What was tried or decided before it came back is of the time before. */
function lastSpell(leak: Leak, said: Said): Spell {
  const from = leak.reopenedAt.at(-1) ?? leak.openedAt
  const attempt = leak.attempts.find(({ at }) => at >= from)
  const isPutOff = leak.deferred !== null && leak.deferred.at >= from
  return {
    from: new Date(from),
    firstAttemptAt: attempt ? new Date(attempt.at) : null,
    verifiedAt: leak.verified && new Date(leak.verified.at),
    deferral: isPutOff ? deferralOf(said.get(leak.deferred?.factId ?? '')) : null,
  }
}

function deferralOf(entry: { readonly kind: FieldEvent['kind'] } | undefined): Spell['deferral'] {
  if (entry?.kind !== 'repair.deferred') return null
  const { reason, approvedBy, until } = entry as Extract<FieldEvent, { kind: 'repair.deferred' }>
  return { reason, approvedBy, until: until ?? null }
}
