import { type ChainBreak, type ChainHead, verifyChain } from '../../platform/chain.ts'
import { chainOf } from '../../platform/chain-rows.ts'
import type { Reader } from '../../platform/store.ts'
import { sealBreak, sealsOf } from './seals.ts'

export type Proved =
  | { readonly whole: true; readonly events: number; readonly head: string; readonly seals: number }
  | (ChainBreak & { readonly events: number; readonly head: string; readonly seals: number })

const LINKS_BETWEEN_WORDS = 5_000

/**
 * Walks the whole chain of a site, and holds every head that was signed to what stands at its place: a chain that
 * somebody wrote anew with hashes that fit is still not the one that was signed.
 *
 * @param onProgress told the share of the chain that is walked
 */
export async function prove(reader: Reader, siteId: string, onProgress: (share: number) => void): Promise<Proved> {
  const seals = await sealsOf(reader.read, siteId)
  const site = await headOf(reader, siteId)
  const signed = new Set(seals.map(({ position }) => position))
  const hashes = new Map<number, string>()
  const verdict = await verifyChain(chainOf(reader.chain, siteId, site.chainLength), site, (position, hash) => {
    if (signed.has(position)) hashes.set(position, hash)
    if (position % LINKS_BETWEEN_WORDS === 0) onProgress(position / site.chainLength)
  })
  const breaks = seals.map((seal) => sealBreak(seal, hashes.get(seal.position)))
  const about = { events: site.chainLength, head: site.chainHead, seals: breaks.filter((broken) => broken === null).length }
  if (!verdict.whole) return { ...verdict, ...about }
  const broken = breaks.find((one) => one !== null)
  return broken ? { ...broken, ...about } : { ...verdict, ...about }
}

/** Counted first: what is appended meanwhile makes the chain longer, and never leaves more events than it says. */
async function headOf({ read }: Reader, siteId: string): Promise<ChainHead> {
  const eventsThere = await read.event.count({ where: { siteId } })
  const select = { chainHead: true, chainLength: true }
  return { eventsThere, ...(await read.site.findUniqueOrThrow({ where: { id: siteId }, select })) }
}
