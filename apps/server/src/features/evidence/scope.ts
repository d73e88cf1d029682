import { type EvidenceScope, MOST_ENTRIES_IN_EXPORT } from '@glandkeeper/contract/evidence'
import type { FieldEvent } from '@glandkeeper/contract/events'
import { periodOf } from '../../platform/period.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'

/** A site as an export names it, with its chain as it was when the export was begun. */
export interface SiteThen {
  readonly id: string
  readonly name: string
  readonly timeZone: string
  readonly chainHead: string
  readonly chainLength: number
}

export function siteThen(read: Read, siteId: string): Promise<SiteThen> {
  const select = { id: true, name: true, timeZone: true, chainHead: true, chainLength: true }
  return read.site.findUniqueOrThrow({ where: { id: siteId }, select })
}

/** A database takes fewer than a thousand values in one question. */
const IDS_AT_ONCE = 500

/**
 * The places in the chain of all entries of a scope, in order. A correction brings along what it corrects and the other
 * way round, whenever they were taken: neither can be understood alone.
 */
export async function placesIn(read: Read, site: SiteThen, scope: EvidenceScope): Promise<number[]> {
  const found = await placesOrTooMany(read, site, scope)
  if (typeof found === 'number') throw new Refusal('evidence/too-much', `${found} entries`)
  return found
}

/** How many entries an export of a scope has, or would have if it were not too many. */
export async function countIn(read: Read, site: SiteThen, scope: EvidenceScope): Promise<number> {
  const found = await placesOrTooMany(read, site, scope)
  return typeof found === 'number' ? found : found.length
}

async function placesOrTooMany(read: Read, site: SiteThen, scope: EvidenceScope): Promise<number[] | number> {
  const ofChain = { siteId: site.id, position: { lte: site.chainLength } }
  const ofValves = { ...ofChain, ...(await valvesIn(read, site.id, scope)) }
  const takenAt = periodOf(scope, site.timeZone)
  const inTime = takenAt === null ? ofValves : { ...ofValves, takenAt }
  const count = await read.event.count({ where: inTime })
  if (count > MOST_ENTRIES_IN_EXPORT) return count
  const place = { id: true, position: true }
  const places = new Map((await read.event.findMany({ where: inTime, select: place })).map(({ id, position }) => [id, position]))
  if (takenAt !== null) {
    const where = { ...ofValves, kind: 'fact.corrected' }
    const corrections = await read.event.findMany({ where, select: { ...place, body: true } })
    const missing = withCorrections(places, corrections)
    for (let at = 0; at < missing.length; at += IDS_AT_ONCE) {
      const id = { in: missing.slice(at, at + IDS_AT_ONCE) }
      for (const row of await read.event.findMany({ where: { ...ofValves, id }, select: place })) places.set(row.id, row.position)
    }
  }
  if (places.size > MOST_ENTRIES_IN_EXPORT) return places.size
  return [...places.values()].toSorted((one, other) => one - other)
}

interface Corrector {
  readonly id: string
  readonly position: number
  readonly body: string
}

/** Adds to the places every correction of what is there, and says which corrected entries are still missing. */
function withCorrections(places: Map<string, number>, corrections: readonly Corrector[]): string[] {
  const pairs = corrections.flatMap(({ id, position, body }) => {
    const corrects = correctedBy(body)
    return corrects === null ? [] : [{ id, position, corrects }]
  })
  const missing = new Set(
    pairs.filter(({ id, corrects }) => places.has(id) && !places.has(corrects)).map(({ corrects }) => corrects),
  )
  for (const { id, position, corrects } of pairs) if (places.has(corrects) || missing.has(corrects)) places.set(id, position)
  return [...missing]
}

/** The id of the entry that an entry puts right; null where it is no correction, or cannot be read. */
export function correctedBy(body: string): string | null {
  try {
    const event = JSON.parse(body) as FieldEvent
    return event.kind === 'fact.corrected' ? event.corrects : null
  } catch {
    return null
  }
}

/** One valve by its id, which has an index; those of an area as they stand in it today. */
async function valvesIn(read: Read, siteId: string, { tag, area: code }: EvidenceScope) {
  const area = code === undefined ? null : await read.area.findUnique({ where: { siteId_code: { siteId, code } } })
  if (code !== undefined && area === null) throw new Refusal('area/unknown', code)
  if (tag === undefined) return area && { valve: { areaId: area.id } }
  const valve = await read.valve.findUnique({ where: { siteId_tag: { siteId, tag } } })
  if (!valve || (area && valve.areaId !== area.id)) throw new Refusal('valve/unknown', tag)
  return { valveId: valve.id }
}
