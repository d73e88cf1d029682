import type { EvidenceCheck, EvidenceEntry, EvidencePayload } from '@glandkeeper/contract/evidence'
import { hashOf } from '../../platform/chain.ts'
import type { Reader } from '../../platform/store.ts'
import { inRegister } from './check-register.ts'
import { type ReadExport, readExport } from './read-export.ts'
import { fingerprintOf } from './sealed-key.ts'
import { isSigned } from './seals.ts'

type Check = EvidenceCheck['checks'][number]

/**
 * Is this file an export that nobody altered, signed by this site, and does the register still say the same? All that
 * can be looked at is looked at, so that an altered file also tells which entry was altered.
 *
 * @param siteId the site that asks; null for the site that the export names, where the register has it
 */
export async function checkEvidence(reader: Reader | null, siteId: string | null, bytes: Uint8Array): Promise<EvidenceCheck> {
  const read = readExport(bytes)
  if ('fault' in read) {
    const checks = [{ what: 'It can be read', isGood: false, says: read.fault }]
    return { checks, isGood: false, entries: 0, madeAt: null, site: null }
  }
  const { payload, evidence } = read
  const own = siteId ?? payload.site.id
  const many = payload.entries.length === 1 ? 'one entry' : `${payload.entries.length} entries`
  const checks: Check[] = [
    { what: 'It can be read', isGood: true, says: `An export of ${payload.site.name} with ${many}, made by ${payload.madeBy}.` },
    signatureOf(read),
    ...(reader ? [await keyOf(reader, own, evidence.publicKey)] : [withoutRegister(evidence.publicKey)]),
    hashesOf(payload),
    linksOf(payload),
    ...(reader ? await inRegister(reader, own, payload) : []),
  ]
  const isGood = checks.every((check) => check.isGood)
  return { checks, isGood, entries: payload.entries.length, madeAt: payload.madeAt, site: payload.site.name }
}

function signatureOf({ evidence: { payload, signature, publicKey } }: ReadExport): Check {
  const isGood = isSigned(Buffer.from(payload), publicKey, signature)
  const says = isGood
    ? 'What is signed is word for word what was signed.'
    : 'The signature does not fit: the file was altered after it was made, or signed with another key than it names.'
  return { what: 'The signature is good', isGood, says }
}

async function keyOf({ read }: Reader, siteId: string, publicKey: string): Promise<Check> {
  const what = 'The key is this site’s'
  const keys = await read.siteKey.findMany({ where: { siteId }, select: { publicKey: true } })
  const fingerprint = fingerprintOrNull(publicKey)
  if (fingerprint === null) return { what, isGood: false, says: 'What stands in place of a key is none.' }
  const isGood = keys.some((key) => fingerprintOf(key.publicKey) === fingerprint)
  const says = isGood
    ? `Its fingerprint is ${fingerprint}.`
    : `The key with the fingerprint ${fingerprint} is none of this site’s: another site signed this, or somebody else.`
  return { what, isGood, says }
}

function withoutRegister(publicKey: string): Check {
  const fingerprint = fingerprintOrNull(publicKey)
  const says = fingerprint === null ? 'What stands in place of a key is none.' : `Compare its fingerprint: ${fingerprint}.`
  return { what: 'The key is one', isGood: fingerprint !== null, says }
}

function fingerprintOrNull(publicKey: string): string | null {
  try {
    return fingerprintOf(publicKey)
  } catch {
    return null
  }
}

/** Each entry by itself: its hash is what its content and the hash before it make. */
function hashesOf({ site, entries }: EvidencePayload): Check {
  const what = 'Every hash follows from its entry'
  const wrong = entries.find((entry) => entry.siteId !== site.id || hashOfEntry(entry) !== entry.hash)
  if (wrong) return { what, isGood: false, says: `The entry at position ${wrong.position}, valve ${wrong.tag}, was altered.` }
  return { what, isGood: true, says: 'Each entry and the hash before it make the hash it has.' }
}

function hashOfEntry(entry: EvidenceEntry): string | null {
  try {
    return hashOf(entry.before, entry)
  } catch {
    return null
  }
}

/** Entries among each other: in order, and linked where one follows the other. */
function linksOf({ entries, chain }: EvidencePayload): Check {
  const what = 'Neighbours are linked'
  const wrong = entries.find(({ position, before }, index) => {
    const last = entries[index - 1]
    if (position === 1 && before !== '') return true
    if (!last) return false
    return last.position >= position || (last.position === position - 1 && last.hash !== before)
  })
  if (wrong) return { what, isGood: false, says: `The entry at position ${wrong.position} does not follow the one before it.` }
  const end = entries.at(-1)
  if (end && (end.position > chain.length || (end.position === chain.length && end.hash !== chain.head)))
    return { what, isGood: false, says: `The entry at position ${end.position} is not in the chain that the export names.` }
  return { what, isGood: true, says: 'They are in the order of the chain, and those side by side fit each other.' }
}
