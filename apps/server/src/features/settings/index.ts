import type { FastifyInstance } from 'fastify'
import { confirmSetting, listSettings, settings } from '@glandkeeper/contract/settings'
import { type Platform, route } from '../../platform/route.ts'
import { shownSettings } from './read.ts'
import { confirm } from './write.ts'

export { settingValuesOf, siteSettings } from './read.ts'

/** @param onChanged told when a figure changed that forecasts and standings are made with */
export function settingRoutes(app: FastifyInstance, platform: Platform, onChanged: (siteId: string) => void): void {
  const { store, clock } = platform
  route(app, platform, listSettings, async ({ me }) => ({ settings: await shownSettings(store.read, me.siteId) }))

  route(app, platform, confirmSetting, async ({ params, body, me }) => {
    const confirmed = await store.write((write) => confirm(write, me, { key: params.key, ...body }, clock()))
    const { group } = settings[params.key]
    if (body.value !== body.seen && (group === 'forecast' || group === 'follow-up')) onChanged(me.siteId)
    return confirmed
  })
}
