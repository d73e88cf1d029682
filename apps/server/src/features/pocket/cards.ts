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
  presentState,
} from '../glands/index.ts'
import { presentValve } from '../valves/index.ts'

const ENTRIES_ON_A_CARD = 3

type Row = ValveModel & { readonly area: AreaModel; readonly state: ValveStateModel | null }
type Correction = Extract<FieldEvent, { kind: 'fact.corrected' }>

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

/** What was said against entries of these valves, by the entry it is about. */
async function correctionsOf(read: Read, siteId: string, rows: readonly Row[]): Promise<ReadonlyMap<string, Correction>> {
  const events = await read.event.findMany({
    where: { siteId, valveId: { in: rows.map(({ id }) => id) }, kind: 'fact.corrected' },
    orderBy: [{ takenAt: 'asc' }, { id: 'asc' }],
    select: { body: true },
  })
  return new Map(events.map(({ body }) => JSON.parse(body) as Correction).map((event) => [event.corrects, event]))
}

async function lastEntries(
  read: Read,
  { siteId, id: valveId }: Row,
  corrections: ReadonlyMap<string, Correction>,
): Promise<ValveCard['timeline']> {
  const last = await read.event.findMany({
    where: { siteId, valveId },
    orderBy: [{ takenAt: 'desc' }, { id: 'desc' }],
    take: ENTRIES_ON_A_CARD,
    select: { id: true, body: true },
  })
  return last.map(({ id, body }) => {
    const event = JSON.parse(body) as FieldEvent
    return { event, says: entryInWords(event), standsAs: standsAs(id, event, corrections) }
  })
}

function standsAs(
  id: string,
  event: FieldEvent,
  corrections: ReadonlyMap<string, Correction>,
): ValveCard['timeline'][number]['standsAs'] {
  if (event.kind === 'fact.corrected') return 'correction'
  const correction = corrections.get(id)
  if (!correction) return 'as entered'
  return correction.replacement === null ? 'taken back' : 'corrected'
}

async function expectsNow(read: Read, row: Row, basis: ForecastBasis, now: Date): Promise<ValveCard['expects']> {
  const events: EventModel[] = await read.event.findMany({
    where: { siteId: row.siteId, valveId: row.id },
    orderBy: [{ takenAt: 'desc' }, { id: 'desc' }],
  })
  return expectedNow(row.service, glandRecord(row, events, basis).ahead.lives, basis, now)
}
