import type { EvidenceCheck, EvidenceEntry, EvidencePayload } from '@glandkeeper/contract/evidence'
import { hashOf } from '../../platform/chain.ts'
import type { LinkAndBefore } from '../../platform/chain-rows.ts'
import type { Reader } from '../../platform/store.ts'

type Check = EvidenceCheck['checks'][number]

const ROWS_AT_ONCE = 2_000
const HOLDS = 'The register holds the same entries'
const STANDS = 'The chain still has the head of that day'

/** What the register of a site says of an export today. */
export async function inRegister(reader: Reader, siteId: string, payload: EvidencePayload): Promise<Check[]> {
  if (payload.site.id !== siteId)
    return [{ what: HOLDS, isGood: false, says: `It is of another site, ${payload.site.name}: this register cannot say.` }]
  const known = await reader.read.site.findUnique({ where: { id: siteId }, select: { id: true } })
  if (!known) return [{ what: HOLDS, isGood: false, says: 'This register does not have the site: it cannot say.' }]
  return [await entriesOf(reader, payload), await headOf(reader, payload)]
}

async function entriesOf({ chain }: Reader, { site, entries }: EvidencePayload): Promise<Check> {
  for (let at = 0; at < entries.length; at += ROWS_AT_ONCE) {
    const some = entries.slice(at, at + ROWS_AT_ONCE)
    const rows = await chain.at(site.id, [...new Set(some.map(({ position }) => position))])
    const byPosition = new Map(rows.map((row) => [row.position, row]))
    for (const entry of some) {
      const fault = difference(entry, byPosition.get(entry.position))
      if (fault !== null) return { what: HOLDS, isGood: false, says: `Position ${entry.position}, valve ${entry.tag}: ${fault}.` }
    }
  }
  return { what: HOLDS, isGood: true, says: 'Each at its place, with the same hash and the same content.' }
}

function difference(entry: EvidenceEntry, row: LinkAndBefore | undefined): string | null {
  if (!row) return 'the register has no entry there any more'
  if (row.id !== entry.id || row.hash !== entry.hash) return 'the register has another entry there'
  return hashOf(row.before, row) === entry.hash ? null : 'the register’s own entry was altered since, or the one before it'
}

async function headOf({ chain: reading }: Reader, { site, chain }: EvidencePayload): Promise<Check> {
  if (chain.length === 0) return { what: STANDS, isGood: true, says: 'It was empty then.' }
  const [row] = await reading.at(site.id, [chain.length])
  if (row?.hash === chain.head) return { what: STANDS, isGood: true, says: `Its hash still stands at position ${chain.length}.` }
  const says = row
    ? `Another hash stands at position ${chain.length}: the chain was written anew since.`
    : `Nothing stands at position ${chain.length} any more: the chain was cut short since.`
  return { what: STANDS, isGood: false, says }
}
