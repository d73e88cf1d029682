import type { OkIn } from '@glandkeeper/contract/endpoint'
import type { showChain } from '@glandkeeper/contract/evidence'
import type { FastifyBaseLogger } from 'fastify'
import type { Clock } from '../../platform/clock.ts'
import { type By, SiteWork } from '../../platform/site-work.ts'
import type { Store } from '../../platform/store.ts'
import type { Proved } from './prove.ts'
import type { ProofJob } from './prove-worker.ts'
import { sealHead } from './seals.ts'
import { siteKey } from './site-key.ts'

export interface ProvingParts {
  readonly store: Store
  readonly databaseUrl: string
  readonly clock: Clock
  readonly secret: string
  readonly log: Pick<FastifyBaseLogger, 'error'>
}

type Proof = NonNullable<OkIn<typeof showChain>['proof']>
interface Asked {
  readonly at: Date
}

/** Proves the chain of a site in a thread, one proof of a site at a time; a good one signs the head. */
export class Proving {
  readonly #work: SiteWork<Asked, Proved>
  readonly #last = new Map<string, Proof>()
  readonly #clock: Clock

  constructor({ store, databaseUrl, clock, secret, log }: ProvingParts) {
    this.#clock = clock
    this.#work = new SiteWork<Asked, Proved>({
      worker: new URL('./prove-worker.js', import.meta.url),
      onBreak: 'The proof met an unexpected fault; nothing is said about the chain.',
      log,
      jobOf: ({ siteId }): Promise<ProofJob> => Promise.resolve({ databaseUrl, siteId }),
      keep: async (by, { at }, proved, isCancelled) => {
        if (proved.whole && proved.events > 0) {
          const key = await siteKey(store, secret, by, clock())
          if (isCancelled()) return
          await sealHead(store, by.siteId, key, { position: proved.events, hash: proved.head }, clock())
        }
        this.#last.set(by.siteId, proofOf(proved, at, clock()))
      },
    })
  }

  start(by: By): Promise<void> {
    return this.#work.start(by, { at: this.#clock() })
  }

  /** How far one is that runs, and the last one since the server began. */
  of(siteId: string): { share: number | null; fault: string | null; proof: Proof | null } {
    return { ...this.#work.progressOf(siteId), proof: this.#last.get(siteId) ?? null }
  }

  cancel(siteId: string): Promise<boolean> {
    return this.#work.cancel(siteId)
  }

  close(): Promise<void> {
    return this.#work.close()
  }
}

function proofOf(proved: Proved, began: Date, checkedAt: Date): Proof {
  const { whole, events, head, seals } = proved
  const place = proved.whole ? { position: null, eventId: null } : { position: proved.position, eventId: proved.eventId }
  const says = proved.whole ? 'Every entry is as it was written.' : `${capital(proved.what)}.`
  const seconds = Math.round((checkedAt.getTime() - began.getTime()) / 100) / 10
  return { checkedAt: checkedAt.toISOString(), isWhole: whole, entries: events, head, ...place, says, seals, seconds }
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
