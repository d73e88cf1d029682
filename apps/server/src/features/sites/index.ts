import type { FastifyInstance } from 'fastify'
import { changeSite } from '@glandkeeper/contract/sites'
import { noteChange } from '../../platform/register-change.ts'
import { type Platform, route } from '../../platform/route.ts'

/** @param onChanged told when the time zone or the planned stop may have changed, which forecasts are counted to */
export function siteRoutes(app: FastifyInstance, platform: Platform, onChanged: (siteId: string) => void): void {
  const { store, clock } = platform
  route(app, platform, changeSite, async ({ body, me }) => {
    await store.write(async (write) => {
      const before = await write.site.findUniqueOrThrow({ where: { id: me.siteId } })
      await write.site.update({ where: { id: me.siteId }, data: body })
      const { name, timeZone, nextStopOn } = before
      const note = {
        subject: 'site',
        subjectId: me.siteId,
        what: 'site changed',
        before: { name, timeZone, nextStopOn },
        after: body,
      } as const
      await noteChange(write, me, note, clock())
    })
    onChanged(me.siteId)
    return { siteId: me.siteId, ...body }
  })
}
