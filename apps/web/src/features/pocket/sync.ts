import { showCutCard } from '@glandkeeper/contract/cut-cards'
import { showThumbnail } from '@glandkeeper/contract/photos'
import { showPocket } from '@glandkeeper/contract/pocket'
import { listRounds, type Round } from '@glandkeeper/contract/rounds'
import { addressOf, call, ProblemError } from '../../platform/client.ts'
import { emptyPocket, openPocket, type Pocket, type PocketState } from './store.ts'

/** That of `listStock`. */
export const STOCK_ADDRESS = '/api/stock'
const WHOLE_AFTER_MILLISECONDS = 20 * 3_600_000

export interface Synced {
  /** By the clock of the server; negative when the clock of this device is behind. */
  readonly clockAheadMinutes: number
}

/**
 * Brings the pocket register up to date: the rounds, the cards that changed since the last time, and the cut cards of
 * the rounds that are this person's to walk. Throws when nobody answers; what is there stays usable.
 */
export async function syncPocket(personId: string, onProgress: (share: number) => void = () => {}): Promise<Synced> {
  const pocket = await openPocket()
  const before = await pocket.get('state', 'state')
  const isOwn = before?.personId === personId
  // Also where a sync was cut off before it said whose it was.
  if (!isOwn) await emptyPocket()
  const isFresh = isOwn && Date.now() - Date.parse(before.wholeAt) < WHOLE_AFTER_MILLISECONDS
  const { rounds } = await call(listRounds)
  const { asOf, position, answeredAt } = await readCards(pocket, isFresh ? before : null, onProgress)
  await keepRounds(pocket, rounds)
  const mine = rounds.filter(({ fitterId }) => fitterId === null || fitterId === personId)
  await readCutCards(pocket, mine, isFresh)
  await readThumbnails(pocket, mine)
  await keepStock(pocket)
  await pocket.put('state', { personId, asOf, position, wholeAt: isFresh ? before.wholeAt : asOf }, 'state')
  return { clockAheadMinutes: Math.round((answeredAt - Date.parse(asOf)) / 60_000) }
}

type From = Pick<PocketState, 'asOf' | 'position'>

async function readCards(pocket: Pocket, from: From | null, onProgress: (share: number) => void) {
  const changes = from ? { since: from.asOf, position: String(from.position) } : {}
  let first: (From & { readonly answeredAt: number }) | null = null
  let read = 0
  for (let after: string | null | undefined; after !== null;) {
    const page = await call(showPocket, { query: { ...changes, ...(after && { after }) } })
    // That of the first page: what changes while the others are read is asked for again.
    first ??= { asOf: page.asOf, position: page.position, answeredAt: Date.now() }
    const writing = pocket.transaction('cards', 'readwrite')
    for (const card of page.cards) void writing.store.put(card)
    for (const valveId of page.gone) void writing.store.delete(valveId)
    await writing.done
    read += page.cards.length
    onProgress(page.total === 0 ? 1 : read / page.total)
    after = page.next
  }
  if (!first) throw new Error('the pocket register has no first page')
  return first
}

async function keepRounds(pocket: Pocket, rounds: readonly Round[]): Promise<void> {
  const writing = pocket.transaction('rounds', 'readwrite')
  await writing.store.clear()
  for (const round of rounds) void writing.store.put(round)
  await writing.done
}

/** A cut card changes with its valve and the settings of the site: read anew with everything else once a day. */
async function readCutCards(pocket: Pocket, rounds: readonly Round[], isFresh: boolean): Promise<void> {
  const tags = new Set(rounds.flatMap(({ stops }) => stops.map(({ tag }) => tag)))
  const known = new Set(isFresh ? await pocket.getAllKeys('cutCards') : [])
  for (const tag of tags) {
    if (known.has(tag)) continue
    try {
      await pocket.put('cutCards', { tag, card: await call(showCutCard, { params: { tag } }) })
    } catch (error) {
      // A gland that was never measured has no card; the others have.
      if (!(error instanceof ProblemError)) throw error
    }
  }
}

/** Asked for once, so that the service worker has them for the stops of the rounds. Missing ones are no fault. */
async function readThumbnails(pocket: Pocket, rounds: readonly Round[]): Promise<void> {
  if (!('serviceWorker' in navigator) || navigator.serviceWorker.controller === null) return
  for (const valveId of new Set(rounds.flatMap(({ stops }) => stops.map((stop) => stop.valveId)))) {
    const card = await pocket.get('cards', valveId)
    for (const digest of card?.timeline.flatMap(({ event }) => event.photos ?? []) ?? [])
      await fetch(addressOf(showThumbnail, { params: { digest } })).catch(() => null)
  }
}

/** Kept as it came, so that a phone need not load what only the pages of the stores need. Without it nothing else stops. */
async function keepStock(pocket: Pocket): Promise<void> {
  const stock: unknown = await fetch(STOCK_ADDRESS).then(
    (answer) => (answer.ok ? answer.json().catch(() => undefined) : undefined),
    () => undefined,
  )
  if (stock !== undefined) await pocket.put('stock', stock, 'stock')
}
