import type { FastifyInstance } from 'fastify'
import { addStop, changeRound, closeRound, listRounds, makeRound, type Round } from '@glandkeeper/contract/rounds'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'
import type { Read } from '../../platform/store.ts'
import { addStopTo } from './add-stop.ts'
import { createRound } from './make.ts'
import { openRounds } from './queries.ts'
import { changeRoundOf, closeRoundOf } from './write.ts'

export { openRounds, placesToWalk } from './queries.ts'
export { minutesOnFoot, shortestWalk } from './walk.ts'
export { MOST_STOPS, type NewRound, writeRound } from './write.ts'

export function roundRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, listRounds, async ({ me }) => ({ rounds: await openRounds(store.read, me.siteId) }))

  route(app, platform, makeRound, async ({ body, me }) => {
    const roundId = await store.write((write) => createRound(write, me, body, clock()))
    return openRound(store.read, me.siteId, roundId)
  })

  route(app, platform, changeRound, async ({ params, body, me }) => {
    await store.write((write) => changeRoundOf(write, me, params.roundId, body, clock()))
    return openRound(store.read, me.siteId, params.roundId)
  })

  route(app, platform, addStop, async ({ params, body, me }) => {
    await store.write((write) => addStopTo(write, me, params.roundId, body.tag, clock()))
    return openRound(store.read, me.siteId, params.roundId)
  })

  route(app, platform, closeRound, async ({ params, me }) => {
    const round = await openRound(store.read, me.siteId, params.roundId)
    return { closed: true as const, leftOut: await store.write((write) => closeRoundOf(write, me, round, clock())) }
  })
}

/** @throws round/unknown */
export async function openRound(read: Read, siteId: string, roundId: string): Promise<Round> {
  const [round] = await openRounds(read, siteId, roundId)
  if (!round) throw new Refusal('round/unknown', roundId)
  return round
}
