import { createHash } from 'node:crypto'
import canonicalize from 'canonicalize'

/** What is hashed of an event: everything that is kept of it, so that no part can be changed unseen. */
export interface ChainedEvent {
  readonly id: string
  readonly siteId: string
  readonly position: number
  readonly valveId: string
  readonly kind: string
  readonly version: number
  readonly takenAt: Date
  readonly receivedAt: Date
  readonly personId: string
  readonly device: string
  readonly body: string
}

/** JSON in one and only one spelling: keys sorted at every depth, as in RFC 8785. */
export function canonicalJson(value: unknown): string {
  const text = canonicalize(value)
  if (text === undefined) throw new TypeError('not a JSON value')
  return text
}

/** SHA-256 over the hash before it and the event. The first event of a site follows the empty string. */
export function hashOf(before: string, event: ChainedEvent): string {
  const { id, siteId, position, valveId, kind, version, takenAt, receivedAt, personId, device, body } = event
  const linked = {
    before,
    id,
    siteId,
    position,
    valveId,
    kind,
    version,
    takenAt: takenAt.toISOString(),
    receivedAt: receivedAt.toISOString(),
    personId,
    device,
    body,
  }
  return createHash('sha256').update(canonicalJson(linked)).digest('hex')
}

export type ChainVerdict =
  | { readonly whole: true; readonly events: number; readonly head: string }
  | { readonly whole: false; readonly position: number; readonly eventId: string | null; readonly what: string }

/**
 * Walks a chain from its first event and names the first that is not as it was written.
 *
 * @param events in order of position
 * @param head what the site says the last hash and the number of events are
 */
export async function verifyChain(
  events: AsyncIterable<ChainedEvent & { readonly hash: string }>,
  head: { readonly chainHead: string; readonly chainLength: number },
): Promise<ChainVerdict> {
  let before = ''
  let expected = 0
  for await (const event of events) {
    expected += 1
    if (event.position !== expected)
      return { whole: false, position: expected, eventId: null, what: `the event at position ${expected} is missing` }
    const hash = hashOf(before, event)
    if (hash !== event.hash)
      return {
        whole: false,
        position: expected,
        eventId: event.id,
        what: `the event at position ${expected} was altered, or the one before it`,
      }
    before = hash
  }
  if (expected !== head.chainLength)
    return {
      whole: false,
      position: expected + 1,
      eventId: null,
      what: `${head.chainLength} events were written, ${expected} are there`,
    }
  if (before !== head.chainHead)
    return { whole: false, position: expected, eventId: null, what: 'the last hash is not the one the site keeps' }
  return { whole: true, events: expected, head: before }
}
