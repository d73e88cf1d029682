import { setImmediate as nextTurn } from 'node:timers/promises'
import type { FastifyBaseLogger } from 'fastify'
import type { Clock } from '../../platform/clock.ts'
import type { Store, Write } from '../../platform/store.ts'
import { forecastBasis, rebuildState, rebuildStates, VALVES_OF_A_PORTION } from '../glands/index.ts'

/** Judges the leaks of valves again where the register is behind: kept from before it knew leaks, or a rule that has changed. */
export class LeakKeeping {
  readonly #parts: { readonly store: Store; readonly clock: Clock; readonly log: Pick<FastifyBaseLogger, 'error'> }
  #running: Promise<void> = Promise.resolve()
  #isStopping = false

  constructor(parts: { store: Store; clock: Clock; log: Pick<FastifyBaseLogger, 'error'> }) {
    this.#parts = parts
  }

  /** One pass after another: what was asked for while one runs is done after it. */
  catchUp(): Promise<void> {
    this.#running = this.#running
      .then(() => this.#pass())
      .catch((error: unknown) => this.#parts.log.error({ err: error }, 'the leaks of some valves were not judged again'))
    return this.#running
  }

  async close(): Promise<void> {
    this.#isStopping = true
    await this.#running
  }

  async #pass(): Promise<void> {
    const { read } = this.#parts.store
    for (const { id } of await read.site.findMany({ where: { leaksKeptAt: null }, select: { id: true } })) await this.#allOf(id)
    for (const { id, siteId, body } of await read.leakRule.findMany({ select: { id: true, siteId: true, body: true } })) {
      const { leakFrom } = JSON.parse(body) as { leakFrom: number }
      await this.#behind(siteId, { ruleId: id, OR: [{ judgedFrom: null }, { judgedFrom: { not: leakFrom } }] }, leakFrom)
    }
    for (const { id } of await read.site.findMany({ select: { id: true } }))
      await this.#behind(id, { ruleId: null, judgedFrom: { not: null } }, null)
  }

  /** Every valve, retired ones too: their leaks are history all the same. */
  async #allOf(siteId: string): Promise<void> {
    const { store, clock } = this.#parts
    if (!(await rebuildStates(store, siteId, {}, { clock, shouldStop: () => this.#isStopping }))) return
    await store.write((write) => write.site.update({ where: { id: siteId }, data: { leaksKeptAt: clock() } }))
  }

  async #behind(siteId: string, where: object, judgedFrom: number | null): Promise<void> {
    while (!this.#isStopping) {
      const rows = await this.#parts.store.read.valveMonitoring.findMany({
        where: { siteId, ...where },
        take: VALVES_OF_A_PORTION,
        select: { valveId: true },
      })
      if (rows.length === 0) return
      const ids = rows.map(({ valveId }) => valveId)
      await this.#parts.store.write(async (write) => {
        await write.valveMonitoring.updateMany({ where: { valveId: { in: ids } }, data: { judgedFrom } })
        await this.#judge(
          write,
          siteId,
          ids.map((id) => ({ id })),
        )
      })
      await nextTurn()
    }
  }

  async #judge(write: Write, siteId: string, valves: readonly { readonly id: string }[]): Promise<void> {
    const basis = await forecastBasis(write, siteId, this.#parts.clock())
    for (const { id } of valves) await rebuildState(write, siteId, id, basis)
  }
}
