import type { FieldEvent } from '@glandkeeper/contract/events'
import { groupedBy } from '../../platform/grouped-by.ts'
import type { Read } from '../../platform/store.ts'
import { entriesAsTheyStand } from '../glands/index.ts'

type Sighting = Extract<FieldEvent, { kind: 'leak.seen' }>
type Figure = 'screeningValue' | 'dropsPerMinute' | 'opening'

/** A sighting as it stands today. */
export interface StandingSighting {
  readonly takenAt: Date
  readonly said: Omit<Sighting, 'id' | 'version' | 'valveId' | 'device' | 'takenAt' | 'takenBy' | 'photos'>
}

/** An entry says itself when it was taken and of which valve: one column is read in half the time of all. */
const READ = { body: true } as const

/** By valve, in order of time: the sightings that hold one of these figures. Other entries are not read: they are many. */
export async function sightingsWith(
  read: Read,
  siteId: string,
  valveIds: readonly string[],
  figures: readonly Figure[],
  /** Entries taken before are left out, except what was put right to a later time. */
  from: Date | null = null,
): Promise<ReadonlyMap<string, readonly StandingSighting[]>> {
  const ofValves = { siteId, valveId: { in: [...valveIds] } }
  const since = from && { takenAt: { gte: from } }
  const holds = figures.map((figure) => ({ kind: 'leak.seen', body: { contains: `"${figure}"` } }))
  const rows = await read.event.findMany({
    where: { ...ofValves, ...since, OR: [...holds, { kind: 'fact.corrected' }] },
    select: READ,
  })
  const events = rows.map(eventOf)
  // What is told without a figure, or is of another kind, may have been put right to a sighting with one.
  const known = new Set(events.map(({ id }) => id))
  const wanted = events.flatMap(correctedToSighting).filter((id) => !known.has(id))
  if (wanted.length > 0)
    events.push(...(await read.event.findMany({ where: { ...ofValves, id: { in: wanted } }, select: READ })).map(eventOf))
  return new Map([...groupedBy(events, ({ valveId }) => valveId)].map(([valveId, own]) => [valveId, standing(own, figures)]))
}

function eventOf({ body }: { readonly body: string }): FieldEvent {
  return JSON.parse(body) as FieldEvent
}

function correctedToSighting(event: FieldEvent): string[] {
  return event.kind === 'fact.corrected' && event.replacement?.kind === 'leak.seen' ? [event.corrects] : []
}

function standing(events: readonly FieldEvent[], figures: readonly Figure[]): StandingSighting[] {
  const isCorrected = events.some(({ kind }) => kind === 'fact.corrected')
  return (isCorrected ? asCorrected(events) : asEntered(events)).flatMap(({ said, takenAt }) =>
    said.kind === 'leak.seen' && figures.some((figure) => said[figure] !== undefined) ? [{ said, takenAt }] : [],
  )
}

function asCorrected(events: readonly FieldEvent[]) {
  return entriesAsTheyStand(
    events.map((event) => ({ id: event.id, body: JSON.stringify(event), takenAt: new Date(event.takenAt) })),
  )
}

/** Of nearly all valves no entry was ever put right: then the order of time is all there is to make. */
function asEntered(events: readonly FieldEvent[]) {
  return events
    .map((said) => ({ said, takenAt: new Date(said.takenAt) }))
    .toSorted((one, other) => one.takenAt.getTime() - other.takenAt.getTime() || (one.said.id < other.said.id ? -1 : 1))
}
