import { addDaysOff, listDaysOff, removeDaysOff } from '@glandkeeper/contract/crews'
import type { FastifyInstance } from 'fastify'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'
import { createDaysOff, daysOffOf, removeDaysOffOf } from './keep.ts'

export { createDaysOff } from './keep.ts'
export { daysOfRule } from './days-of-rule.ts'
export { closedWeeks, hoursByWeek, type HoursOff } from './hours-by-week.ts'
export { hoursOff } from './hours-off.ts'

export function daysOffRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, listDaysOff, async ({ me }) => ({ daysOff: await daysOffOf(store.read, me.siteId) }))

  route(app, platform, addDaysOff, async ({ body, me }) => {
    const id = await store.write((write) => createDaysOff(write, me, body, clock()))
    const added = (await daysOffOf(store.read, me.siteId)).find(({ daysOffId }) => daysOffId === id)
    if (!added) throw new Refusal('daysoff/unknown', id)
    return added
  })

  route(app, platform, removeDaysOff, async ({ params, me }) => {
    await store.write((write) => removeDaysOffOf(write, me, params.daysOffId, clock()))
    return { removed: true as const }
  })
}
