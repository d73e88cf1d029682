import { TZDate } from '@date-fns/tz'
import type { FastifyBaseLogger } from 'fastify'
import { type Clock, dayAt } from '../../platform/clock.ts'
import { SiteWork } from '../../platform/site-work.ts'
import type { Store } from '../../platform/store.ts'
import { keepStudy, type MadeStudy } from './kept-study.ts'
import type { StudyJob } from './study-worker.ts'

interface Parts {
  readonly store: Store
  readonly databaseUrl: string
  readonly clock: Clock
  readonly log: Pick<FastifyBaseLogger, 'error'>
}

const HOUR_OF_NIGHT = 2
const LOOK_EVERY_MS = 10 * 60_000
/** A larger register is studied at its start and at night, not because somebody opened a page. */
const MOST_ENTRIES_UNASKED = 200_000
const ASKED = null

/** Studies leaks and packings of a site in a worker thread: when asked, at the start, and each night after new entries. */
export class LeakStudies {
  readonly #parts: Parts
  readonly #work: SiteWork<typeof ASKED, MadeStudy>
  /** The day of the site on which the night last tried: one that breaks is not tried again before the next. */
  readonly #triedOn = new Map<string, string>()
  #night: NodeJS.Timeout | null = null
  #isStopping = false

  constructor(parts: Parts) {
    const { store, databaseUrl, clock, log } = parts
    this.#parts = parts
    this.#work = new SiteWork<typeof ASKED, MadeStudy>({
      worker: new URL('./study-worker.js', import.meta.url),
      onBreak: 'The study met an unexpected fault; the one before stays.',
      log,
      jobOf: async ({ siteId }): Promise<StudyJob> => ({
        databaseUrl,
        siteId,
        now: clock().getTime(),
        entries: await this.#entriesOf(siteId),
      }),
      keep: async ({ siteId }, _asked, made, isCancelled) => {
        if (!isCancelled()) await keepStudy(store, siteId, made)
      },
    })
  }

  start(siteId: string): Promise<void> {
    return this.#work.start({ siteId, personId: '' }, ASKED)
  }

  /** For a page that finds no study: a small site gets its first without being asked; what broke is not begun again. */
  async startFirst(siteId: string): Promise<void> {
    if (this.progressOf(siteId).fault !== null) return
    const entries = await this.#entriesOf(siteId)
    if (entries > 0 && entries <= MOST_ENTRIES_UNASKED) void this.start(siteId)
  }

  progressOf(siteId: string): { share: number | null; fault: string | null } {
    return this.#work.progressOf(siteId)
  }

  cancel(siteId: string): Promise<boolean> {
    return this.#work.cancel(siteId)
  }

  /** At the start of the server: one site after the other, where a study is missing or entries came since. */
  catchUp(): Promise<void> {
    return this.#unasked(async () => {
      for (const { id } of await this.#sites()) if (!this.#isStopping && (await this.#isBehind(id))) await this.start(id)
    })
  }

  /** Looks every ten minutes whether a site has had its study of the night, so that a missed night is made up for. */
  watchNights(): void {
    this.#night = setInterval(() => void this.studiesOfTheNight(), LOOK_EVERY_MS).unref()
  }

  studiesOfTheNight(): Promise<void> {
    return this.#unasked(() => this.#ofTheNight())
  }

  async #ofTheNight(): Promise<void> {
    for (const { id, timeZone } of await this.#sites()) {
      const now = this.#parts.clock()
      const today = dayAt(now, timeZone)
      if (this.#isStopping || new TZDate(now, timeZone).getHours() < HOUR_OF_NIGHT) continue
      const newest = await this.#newest(id)
      const hasToday = newest !== null && dayAt(newest.madeAt, timeZone) >= today
      if (hasToday || this.#triedOn.get(id) === today || !(await this.#isBehind(id))) continue
      this.#triedOn.set(id, today)
      await this.start(id)
    }
  }

  async close(): Promise<void> {
    this.#isStopping = true
    if (this.#night) clearInterval(this.#night)
    await this.#work.close()
  }

  /** Nobody waits for what was not asked for, and nobody would hear of a fault in it. */
  async #unasked(work: () => Promise<void>): Promise<void> {
    try {
      await work()
    } catch (error) {
      this.#parts.log.error({ err: error }, 'the studies of some sites were not begun')
    }
  }

  async #isBehind(siteId: string): Promise<boolean> {
    const entries = await this.#entriesOf(siteId)
    const newest = await this.#newest(siteId)
    return newest === null ? entries > 0 : entries > newest.entries
  }

  async #entriesOf(siteId: string): Promise<number> {
    const { chainLength } = await this.#parts.store.read.site.findUniqueOrThrow({
      where: { id: siteId },
      select: { chainLength: true },
    })
    return chainLength
  }

  #newest(siteId: string) {
    return this.#parts.store.read.leakStudy.findFirst({
      where: { siteId },
      orderBy: [{ madeAt: 'desc' }, { id: 'desc' }],
      select: { madeAt: true, entries: true },
    })
  }

  #sites() {
    return this.#parts.store.read.site.findMany({ select: { id: true, timeZone: true }, orderBy: { id: 'asc' } })
  }
}
