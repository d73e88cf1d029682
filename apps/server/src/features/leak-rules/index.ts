import { addLeakRule, changeLeakRule, listLeakRules, monitorValves, showRegulated } from '@glandkeeper/contract/leak-rules'
import type { FastifyInstance } from 'fastify'
import { type Platform, route } from '../../platform/route.ts'
import { examplesOffered } from './example-rules.ts'
import { monitorValvesOf } from './monitor-valves.ts'
import { regulatedState, rulesOf, shownRule } from './show.ts'
import { addRuleOf, changeRuleOf } from './write.ts'

export { examplesOffered } from './example-rules.ts'
export { monitorValvesOf } from './monitor-valves.ts'
export { fieldsOfRule } from './rule-of-row.ts'
export { sightingsWith, type StandingSighting } from './sightings.ts'
export { addRuleOf } from './write.ts'

/** @param onChanged told when leaks may have to be judged again */
export function leakRuleRoutes(app: FastifyInstance, platform: Platform, onChanged: () => void): void {
  const { store, clock } = platform
  const { read } = store
  route(app, platform, listLeakRules, async ({ me }) => ({
    rules: await rulesOf(read, me.siteId),
    examples: [...examplesOffered],
  }))

  route(app, platform, addLeakRule, async ({ body, me }) => {
    const id = await store.write((write) => addRuleOf(write, me, body, clock()))
    return shownRule(read, me.siteId, id)
  })

  route(app, platform, changeLeakRule, async ({ params: { ruleId }, body, me }) => {
    await store.write((write) => changeRuleOf(write, me, { ruleId, ...body }, clock()))
    onChanged()
    return shownRule(read, me.siteId, ruleId)
  })

  route(app, platform, monitorValves, async ({ body, me }) => {
    const valves = await store.write((write) => monitorValvesOf(write, me, body, clock()))
    onChanged()
    return { valves }
  })

  route(app, platform, showRegulated, ({ params, query, me }) =>
    regulatedState(read, me.siteId, { ruleId: params.ruleId, lookAhead: query.lookAhead }, clock()),
  )
}
