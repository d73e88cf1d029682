import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { count, quantity } from './quantity.ts'
import { everybody } from './roles.ts'
import { ValveTag } from './valves.ts'

const many = (label: string) => count(label, 0, 1_000_000_000_000)
const Hash = z.string().regex(/^[0-9a-f]{64}$/)

/** More entries than this are exported in parts: by area, by period. */
export const MOST_ENTRIES_IN_EXPORT = 100_000
/** Of these so many are put on paper, the first. */
export const MOST_ENTRIES_ON_PAPER = 2000
/** An export to be checked may have so many bytes. */
export const MOST_BYTES_OF_EVIDENCE = 128 * 1024 * 1024

const scope = z.strictObject({
  tag: ValveTag.optional(),
  area: AreaCode.optional(),
  /** First and last day of the time taken, by the calendar of the site. */
  from: z.iso.date().optional(),
  to: z.iso.date().optional(),
})
export type EvidenceScope = z.infer<typeof scope>

/** One entry as the chain keeps it: enough to work its hash out again. */
export const EvidenceEntry = z.object({
  position: many('Place in the chain'),
  id: z.string(),
  siteId: z.string(),
  valveId: z.string(),
  tag: ValveTag,
  kind: z.string(),
  version: many('Version'),
  takenAt: z.iso.datetime(),
  receivedAt: z.iso.datetime(),
  personId: z.string(),
  person: z.string(),
  device: z.string(),
  /** The entry as it was sent, in canonical JSON. */
  body: z.string(),
  /** Hash of the entry before it in the chain of the site; empty for the first. */
  before: z.string(),
  hash: Hash,
  says: z.string(),
  /** The entry a correction puts right; and of an entry, what became of it. */
  standsAs: z.enum(['as entered', 'corrected', 'taken back', 'correction']),
})
export type EvidenceEntry = z.infer<typeof EvidenceEntry>

/** What is signed, as text: `payload` is the exact text that was signed, so that nobody has to spell it again. */
export const Evidence = z.object({
  payload: z.string(),
  /** Ed25519 over the UTF-8 of the payload, in base64. */
  signature: z.string(),
  /** In PEM. */
  publicKey: z.string(),
})
export type Evidence = z.infer<typeof Evidence>

/** What the payload says once it is read. */
export const EvidencePayload = z.object({
  what: z.literal('glandkeeper evidence'),
  version: z.literal(1),
  site: z.object({ id: z.string(), name: z.string(), timeZone: z.string() }),
  scope,
  madeAt: z.iso.datetime(),
  madeBy: z.string(),
  /** The chain of the site when the export was made. */
  chain: z.object({ length: many('Entries'), head: z.string() }),
  entries: z.array(EvidenceEntry),
})
export type EvidencePayload = z.infer<typeof EvidencePayload>

export const exportEvidence = endpoint({
  method: 'GET',
  path: '/api/evidence/export.json',
  who: everybody,
  query: scope,
  ok: Evidence,
  status: 200,
})

export const exportEvidenceCsv = endpoint({
  method: 'GET',
  path: '/api/evidence/export.csv',
  who: everybody,
  query: scope,
  ok: z.string(),
  okKind: 'csv',
  status: 200,
})

export const printEvidence = endpoint({
  method: 'GET',
  path: '/api/evidence/export.pdf',
  who: everybody,
  query: scope,
  ok: z.instanceof(Uint8Array),
  okKind: 'pdf',
  status: 200,
})

export const countEvidence = endpoint({
  method: 'GET',
  path: '/api/evidence/count',
  who: everybody,
  query: scope,
  ok: z.object({ entries: many('Entries') }),
  status: 200,
})

/** The public half of the key that signs this site's exports. Written down elsewhere it proves them for good. */
export const showSiteKey = endpoint({
  method: 'GET',
  path: '/api/evidence/key',
  who: everybody,
  ok: z.object({ publicKey: z.string(), fingerprint: Hash, madeAt: z.iso.datetime() }),
  status: 200,
})

export const EvidenceCheck = z.object({
  /** Each thing that was looked at, in order; the first that fails names what is wrong. */
  checks: z.array(z.object({ what: z.string(), isGood: z.boolean(), says: z.string() })),
  isGood: z.boolean(),
  entries: many('Entries'),
  madeAt: z.iso.datetime().nullable(),
  site: z.string().nullable(),
})
export type EvidenceCheck = z.infer<typeof EvidenceCheck>

/** Is an export whole, signed by this site, and what the register still says? */
export const checkEvidence = endpoint({
  method: 'POST',
  path: '/api/evidence/check',
  who: everybody,
  body: z.instanceof(Uint8Array),
  bodyKind: 'evidence',
  ok: EvidenceCheck,
  status: 200,
})

const ChainProof = z.object({
  checkedAt: z.iso.datetime(),
  isWhole: z.boolean(),
  entries: many('Entries'),
  head: z.string(),
  /** Where it is broken, and in what words. */
  position: many('Place in the chain').nullable(),
  eventId: z.string().nullable(),
  says: z.string(),
  /** Heads that were signed earlier and still stand in the chain. */
  seals: many('Signed heads'),
  seconds: quantity({ label: 'Seconds', unit: 's', min: 0, max: 1e6, step: 0.1 }),
})
export type ChainProof = z.infer<typeof ChainProof>

/** The last proof of the chain since the server began, and how far one is that runs. */
export const showChain = endpoint({
  method: 'GET',
  path: '/api/evidence/chain',
  who: everybody,
  ok: z.object({
    entries: many('Entries'),
    head: z.string(),
    share: quantity({ label: 'Share done', unit: 'ratio', min: 0, max: 1, step: 0.001 }).nullable(),
    fault: z.string().nullable(),
    proof: ChainProof.nullable(),
    lastSeal: z.object({ position: many('Place in the chain'), madeAt: z.iso.datetime() }).nullable(),
  }),
  status: 200,
})

/** Walks the whole chain in a thread. */
export const proveChain = endpoint({
  method: 'POST',
  path: '/api/evidence/chain',
  who: everybody,
  ok: z.object({}),
  status: 202,
})

export const cancelProof = endpoint({
  method: 'DELETE',
  path: '/api/evidence/chain',
  who: everybody,
  ok: z.object({ cancelled: z.boolean() }),
  status: 200,
})
