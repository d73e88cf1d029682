import { setImmediate } from 'node:timers/promises'
import type { FieldEvent } from '@glandkeeper/contract/events'
import type { ValveCard } from '@glandkeeper/contract/pocket'
import type { AreaModel, EventModel, ValveModel, ValveStateModel } from '../../generated/sqlite/models.ts'
import type { Read } from '../../platform/store.ts'
import {
  bandsOf,
  entryInWords,
  expectedNow,
  forecastBasis,
  type ForecastBasis,
  glandRecord,
  howRowsStand,
  presentState,
} from '../glands/index.ts'
import { presentValve } from '../valves/index.ts'

const ENTRIES_ON_A_CARD = 3

type Row = ValveModel & { readonly area: AreaModel; readonly state: ValveStateModel | null }

/**
 * Cards from the kept states and the last entries: working each out from its whole history took eight times as long.
 * For the valves that are walked that is done all the same, since a strange reading should be asked about on the spot.
 */
export async function cardsOf(
  read: Read,
  siteId: string,
  { rows, walked }: { readonly rows: readonly Row[]; readonly walked: ReadonlySet<string> },
  now: Date,
): Promise<ValveCard[]> {
  if (rows.length === 0) return []
  const [site, basis, corrections] = await Promise.all([
    read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true } }),
    forecastBasis(read, siteId, now),
    correctionsOf(read, siteId, rows),
  ])
  const asOf = { timeZone: site.timeZone, bands: bandsOf(basis.settings) }
  const cards: ValveCard[] = []
  for (const row of rows) {
    if (row.state === null) continue
    cards.push({
      valve: presentValve(row),
      state: presentState(row.state, asOf),
      expects: walked.has(row.id) ? await expectsNow(read, row, basis, now) : null,
      timeline: await lastEntries(read, row, corrections),
    })
    // Other requests go in between.
    await setImmediate()
  }
  return cards
}

const entry = { id: true, kind: true, body: true, takenAt: true } as const
type Entry = Pick<EventModel, keyof typeof entry>

/** What was said against entries of these valves. */
function correctionsOf(read: Read, siteId: string, rows: readonly Row[]): Promise<Entry[]> {
  const valveId = { in: rows.map(({ id }) => id) }
  return read.event.findMany({ where: { siteId, valveId, kind: 'fact.corrected' }, select: entry })
}

async function lastEntries(
  read: Read,
  { siteId, id: valveId }: Row,
  corrections: readonly Entry[],
): Promise<ValveCard['timeline']> {
  const last = await read.event.findMany({
    where: { siteId, valveId },
    orderBy: [{ takenAt: 'desc' }, { id: 'desc' }],
    take: ENTRIES_ON_A_CARD,
    select: entry,
  })
  const stands = howRowsStand([...last, ...corrections])
  return last.map(({ id, body }) => {
    const event = JSON.parse(body) as FieldEvent
    return { event, says: entryInWords(event), standsAs: stands.get(id) ?? 'correction' }
  })
}

async function expectsNow(read: Read, row: Row, basis: ForecastBasis, now: Date): Promise<ValveCard['expects']> {
  const events: EventModel[] = await read.event.findMany({
    where: { siteId: row.siteId, valveId: row.id },
    orderBy: [{ takenAt: 'desc' }, { id: 'desc' }],
  })
  return expectedNow(row.service, glandRecord(row, events, basis).ahead.lives, basis, now)
}
