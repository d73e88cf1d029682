import type { Outcome } from '@glandkeeper/contract/events'
import { sendPhoto } from '@glandkeeper/contract/photos'
import { ProblemError, call } from '../client.ts'
import {
  addEntries,
  entriesIn,
  type NewEntry,
  openOutbox,
  type OutboxDatabase,
  type OutboxEntry,
  type OutboxPhoto,
  photosIn,
  settlePhoto,
} from './entries.ts'
import { sendWaiting } from './send.ts'

const FIRST_PAUSE = 1000
const LONGEST_PAUSE = 60_000

/** What the screens show of the outbox. */
export interface OutboxView {
  readonly entries: readonly OutboxEntry[]
  readonly photos: readonly OutboxPhoto[]
  /** What the server said to entries sent from this tab, by the entry's id. */
  readonly outcomes: ReadonlyMap<string, Outcome>
  readonly isSignedOut: boolean
  /** Set where the device refuses to keep anything. */
  readonly fault: string | null
}

const nothing: OutboxView = {
  entries: [],
  photos: [],
  outcomes: new Map(),
  isSignedOut: false,
  fault: null,
}

/** Entries made on this device, kept until the server has them. One for the page; any tab may add, one tab sends. */
class Outbox {
  #database: Promise<OutboxDatabase> | null = null
  #view = nothing
  #personId: string | null = null
  #pause = FIRST_PAUSE
  #timer: ReturnType<typeof setTimeout> | undefined
  #isSending = false
  #isAskedAgain = false
  #hasDelivered = false
  readonly #listeners = new Set<() => void>()
  readonly #delivered = new Set<() => void>()
  readonly #otherTabs = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('glandkeeper-outbox')

  readonly view = (): OutboxView => this.#view

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  /** Called after entries have reached the server: what was read before is old. */
  onDelivered(listener: () => void): () => void {
    this.#delivered.add(listener)
    return () => this.#delivered.delete(listener)
  }

  /** Begins to send, and goes on whenever there may be a chance. */
  start(): void {
    addEventListener('online', () => this.wake())
    document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && this.wake())
    this.#otherTabs?.addEventListener('message', () => void this.#read())
    void this.#read()
  }

  /** Who is signed in; null sends nothing and keeps on saving. */
  signedIn(personId: string | null): void {
    if (personId === this.#personId) return
    this.#personId = personId
    this.wake()
  }

  /** Resolves once the entries are on the disk of the device: only then may the screen say so. */
  async add(entries: readonly NewEntry[], photos: readonly OutboxPhoto[] = []): Promise<void> {
    await addEntries(await this.#open(), entries, photos)
    await this.#read()
    this.#otherTabs?.postMessage('changed')
    this.wake()
  }

  /** For what a person does to an entry: puts it right, or sets it aside. */
  async change(work: (database: OutboxDatabase) => Promise<void>): Promise<void> {
    await work(await this.#open())
    await this.#read()
    this.#otherTabs?.postMessage('changed')
    this.wake()
  }

  /** Tries at once, whatever the last pause was. */
  wake(): void {
    clearTimeout(this.#timer)
    this.#pause = FIRST_PAUSE
    void this.#pass()
  }

  #open(): Promise<OutboxDatabase> {
    this.#database ??= openOutbox()
    return this.#database
  }

  async #read(): Promise<void> {
    try {
      const database = await this.#open()
      this.#show({ entries: await entriesIn(database), photos: await photosIn(database), fault: null })
    } catch (error) {
      this.#database = null
      this.#show({ fault: error instanceof Error ? error.message : String(error) })
    }
  }

  #show(change: Partial<OutboxView>): void {
    this.#view = { ...this.#view, ...change }
    for (const listener of this.#listeners) listener()
  }

  /** One pass at a time in this tab, and by the lock in all of them; what was added meanwhile gets a pass of its own. */
  async #pass(): Promise<void> {
    if (this.#isSending) {
      this.#isAskedAgain = true
      return
    }
    this.#isSending = true
    try {
      do {
        this.#isAskedAgain = false
        await this.#send()
      } while (this.#isAskedAgain)
    } finally {
      this.#isSending = false
    }
  }

  async #send(): Promise<void> {
    const personId = this.#personId
    if (personId === null) return
    const database = await this.#open()
    if ((await entriesIn(database)).length === 0 && (await photosIn(database)).length === 0) return
    const goesOn = await withLock(async () => {
      const sent = await sendWaiting(database, personId)
      if (sent.outcomes.length > 0) {
        const outcomes = new Map([...this.#view.outcomes, ...sent.outcomes.map((outcome) => [outcome.id, outcome] as const)])
        this.#hasDelivered = true
        this.#pause = FIRST_PAUSE
        this.#show({ outcomes, isSignedOut: false })
      }
      this.#show({ isSignedOut: sent.isSignedOut })
      return sent.goesOn && (await sendPhotos(database, personId))
      // Whatever went wrong, the entries are where they were: they are tried again.
    }).catch(() => false)
    await this.#read()
    this.#otherTabs?.postMessage('changed')
    if (this.#hasDelivered) for (const listener of this.#delivered) listener()
    this.#hasDelivered = false
    const isLeft = this.#view.entries.some(({ state }) => state === 'waiting') || this.#view.photos.length > 0
    if (!goesOn || isLeft) this.#later()
  }

  /** Longer each time, and never all phones of a plant at the same moment. */
  #later(): void {
    clearTimeout(this.#timer)
    this.#timer = setTimeout(() => void this.#pass(), this.#pause * (0.75 + Math.random() / 2))
    this.#pause = Math.min(this.#pause * 2, LONGEST_PAUSE)
  }
}

/** Pictures follow their entries one by one. A refused one is kept with its reason. */
async function sendPhotos(database: OutboxDatabase, personId: string): Promise<boolean> {
  for (const photo of await photosIn(database)) {
    if (photo.personId !== personId || photo.problem !== null) continue
    try {
      await call(sendPhoto, { params: { digest: photo.digest }, body: photo })
      await settlePhoto(database, photo, null)
    } catch (error) {
      if (!(error instanceof ProblemError) || error.problem.status === 401) return false
      if (error.problem.status < 500) await settlePhoto(database, photo, error.problem)
      else return false
    }
  }
  return true
}

/** Without a secure page there are no locks: then two tabs may send the same entry, and its id makes it one. */
function withLock(work: () => Promise<boolean>): Promise<boolean> {
  return 'locks' in navigator ? navigator.locks.request('glandkeeper-outbox', work) : work()
}

export const outbox = new Outbox()
