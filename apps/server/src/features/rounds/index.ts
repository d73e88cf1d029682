import type { FastifyInstance } from 'fastify'
import { closeRound, listRounds, makeRound } from '@glandkeeper/contract/rounds'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'
import { createRound } from './make.ts'
import { openRounds } from './queries.ts'

export { placesToWalk } from './queries.ts'

export function roundRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, listRounds, async ({ me }) => ({ rounds: await openRounds(store.read, me.siteId) }))

  route(app, platform, makeRound, async ({ body, me }) => {
    const roundId = await store.write((write) => createRound(write, me, body, clock()))
    const [round] = await openRounds(store.read, me.siteId, roundId)
    if (!round) throw new Refusal('round/unknown', roundId)
    return round
  })

  route(app, platform, closeRound, async ({ params, me }) => {
    const { count } = await store.write((write) =>
      write.round.updateMany({ where: { id: params.roundId, siteId: me.siteId, closedAt: null }, data: { closedAt: clock() } }),
    )
    if (count === 0) throw new Refusal('round/unknown', params.roundId)
    return { closed: true as const }
  })
}
