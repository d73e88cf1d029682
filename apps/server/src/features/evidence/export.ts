import type { EvidencePayload, EvidenceScope } from '@glandkeeper/contract/evidence'
import type { Reader } from '../../platform/store.ts'
import { entriesAt } from './entries.ts'
import { placesIn, siteThen } from './scope.ts'

export interface ExportAsked {
  readonly siteId: string
  readonly scope: EvidenceScope
  readonly madeBy: string
  readonly madeAt: Date
}

/** Everything an export says, from the register as it is now. */
export async function exportOf(reader: Reader, { siteId, scope, madeBy, madeAt }: ExportAsked): Promise<EvidencePayload> {
  const site = await siteThen(reader.read, siteId)
  const places = await placesIn(reader.read, site, scope)
  const { id, name, timeZone, chainLength: length, chainHead: head } = site
  return {
    what: 'glandkeeper evidence',
    version: 1,
    site: { id, name, timeZone },
    scope,
    madeAt: madeAt.toISOString(),
    madeBy,
    chain: { length, head },
    entries: await entriesAt(reader, siteId, places),
  }
}

/** @example scopeInWords({ tag: 'BM-3307', from: '2026-01-01' }) // → 'valve BM-3307, from 2026-01-01' */
export function scopeInWords({ tag, area, from, to }: EvidenceScope): string {
  const parts = [
    tag !== undefined && `valve ${tag}`,
    area !== undefined && `area ${area}`,
    from !== undefined && `from ${from}`,
    to !== undefined && `to ${to}`,
  ].filter((part) => part !== false)
  return parts.length === 0 ? 'all entries of the site' : parts.join(', ')
}
