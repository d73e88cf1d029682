import { sign, verify } from 'node:crypto'
import { canonicalJson, type ChainBreak } from '../../platform/chain.ts'
import type { Read, Store } from '../../platform/store.ts'
import type { SiteKey } from './site-key.ts'

/** A place of a chain with its hash. */
export interface Head {
  readonly position: number
  readonly hash: string
}

/** A head that was signed, with the public half of the key. */
interface Seal extends Head {
  readonly siteId: string
  readonly madeAt: Date
  readonly signature: string
  readonly key: { readonly publicKey: string }
}

/** Signs a head of the chain, once; a head that is not what stands in the chain is not signed. */
export async function sealHead(store: Store, siteId: string, key: SiteKey, head: Head, madeAt: Date): Promise<void> {
  const { position, hash } = head
  const signature = sign(null, sealedText({ siteId, position, hash, madeAt }), key.privateKey).toString('base64')
  await store.write(async (write) => {
    const place = { siteId, position }
    const event = await write.event.findUnique({ where: { siteId_position: place }, select: { hash: true } })
    if (event?.hash !== hash || (await write.chainSeal.findUnique({ where: { siteId_position: place } }))) return
    await write.chainSeal.create({ data: { siteId, position, hash, keyId: key.id, madeAt, signature } })
  })
}

export function sealsOf(read: Read, siteId: string): Promise<Seal[]> {
  const include = { key: { select: { publicKey: true } } }
  return read.chainSeal.findMany({ where: { siteId }, orderBy: { position: 'asc' }, include })
}

/** Why a seal does not hold, by the hash that stands at its place today. */
export function sealBreak(seal: Seal, hashThere: string | undefined): ChainBreak | null {
  const { position, hash, madeAt, signature, key } = seal
  const broken = (what: string): ChainBreak => ({ whole: false, position, eventId: null, what })
  const which = `the head signed at position ${position} on ${madeAt.toISOString().slice(0, 10)}`
  if (!isSigned(sealedText(seal), key.publicKey, signature)) return broken(`${which} was altered, or its key`)
  if (hashThere === undefined) return broken(`${which} is no longer in the chain`)
  return hashThere === hash ? null : broken(`${which} is not what stands there: the chain was written anew`)
}

function sealedText({ siteId, position, hash, madeAt }: Pick<Seal, 'siteId' | 'position' | 'hash' | 'madeAt'>): Buffer {
  return Buffer.from(canonicalJson({ siteId, position, hash, madeAt: madeAt.toISOString() }))
}

/** Ed25519; what is no key or no signature has not signed it. */
export function isSigned(text: Uint8Array, publicKey: string, signature: string): boolean {
  try {
    return verify(null, text, publicKey, Buffer.from(signature, 'base64'))
  } catch {
    return false
  }
}
