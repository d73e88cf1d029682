import { cancelLeakStudy, makeLeakStudy, showLeakStudy } from '@glandkeeper/contract/leak-study'
import type { FastifyInstance } from 'fastify'
import { type Platform, route } from '../../platform/route.ts'
import type { LeakStudies } from './leak-studies.ts'
import { presentStudy } from './present-study.ts'

export { type ComparedLives, keyOfLives, wordsFor } from './compared-lives.ts'
export { newestStudy } from './kept-study.ts'
export { LeakStudies } from './leak-studies.ts'
export { DAYS_AFTER_OUTAGE } from './outage-sums.ts'

export function leakStudyRoutes(app: FastifyInstance, platform: Platform, studies: LeakStudies): void {
  const { read } = platform.store
  route(app, platform, showLeakStudy, async ({ me, query }) => {
    // Asked before the study is read: one that ends meanwhile would be said to be done beside the study before it.
    const progress = studies.progressOf(me.siteId)
    const study = await presentStudy(read, me.siteId, query.period)
    if (study !== null) return { study, ...progress }
    await studies.startFirst(me.siteId)
    return { study, ...studies.progressOf(me.siteId) }
  })

  route(app, platform, makeLeakStudy, async ({ me }) => {
    void studies.start(me.siteId)
    return {}
  })

  route(app, platform, cancelLeakStudy, async ({ me }) => ({ cancelled: await studies.cancel(me.siteId) }))
}
