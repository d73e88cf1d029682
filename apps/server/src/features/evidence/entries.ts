import type { EvidenceEntry } from '@glandkeeper/contract/evidence'
import type { FieldEvent } from '@glandkeeper/contract/events'
import type { LinkAndBefore } from '../../platform/chain-rows.ts'
import { groupedBy } from '../../platform/grouped-by.ts'
import type { Reader } from '../../platform/store.ts'
import { entryInWords, howRowsStand } from '../glands/index.ts'

const ROWS_AT_ONCE = 2_000
const UNREADABLE = 'This entry cannot be read: it was altered.'

interface Told {
  readonly link: LinkAndBefore
  /** Null where it cannot be read any more. */
  readonly says: string | null
}

/** The entries at these places as an export has them, with how each stands by the corrections among them. */
export async function entriesAt({ read, chain }: Reader, siteId: string, places: readonly number[]): Promise<EvidenceEntry[]> {
  const told: Told[] = []
  for (let at = 0; at < places.length; at += ROWS_AT_ONCE) {
    const links = await chain.at(siteId, places.slice(at, at + ROWS_AT_ONCE))
    told.push(...links.map((link) => ({ link, says: inWords(link.body) })))
  }
  const [people, valves] = await Promise.all([
    read.person.findMany({ where: { siteId }, select: { id: true, name: true } }),
    read.valve.findMany({ where: { siteId }, select: { id: true, tag: true } }),
  ])
  const names = new Map(people.map(({ id, name }) => [id, name]))
  const tags = new Map(valves.map(({ id, tag }) => [id, tag]))
  const stands = standings(told)
  return told.map(({ link, says }): EvidenceEntry => {
    const known = { tag: tags.get(link.valveId) ?? 'unknown', person: names.get(link.personId) ?? '' }
    return { ...link, ...known, says: says ?? UNREADABLE, standsAs: stands.get(link.id) ?? 'correction' }
  })
}

function standings(told: readonly Told[]): Map<string, EvidenceEntry['standsAs']> {
  const readable = told.flatMap(({ link, says }) => (says === null ? [] : [{ ...link, takenAt: new Date(link.takenAt) }]))
  return new Map([...groupedBy(readable, ({ valveId }) => valveId).values()].flatMap((rows) => [...howRowsStand(rows)]))
}

/** Null where somebody altered the register past the server: that goes into the export too, and its hash shows it. */
function inWords(body: string): string | null {
  try {
    return entryInWords(JSON.parse(body) as FieldEvent)
  } catch {
    return null
  }
}
