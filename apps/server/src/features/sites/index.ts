import type { FastifyInstance } from 'fastify'
import { changeSite } from '@glandkeeper/contract/sites'
import { noteChange } from '../../platform/register-change.ts'
import { type Platform, route } from '../../platform/route.ts'

export function siteRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, changeSite, ({ body, me }) =>
    store.write(async (write) => {
      const before = await write.site.findUniqueOrThrow({ where: { id: me.siteId } })
      await write.site.update({ where: { id: me.siteId }, data: body })
      const { name, timeZone } = before
      const note = {
        subject: 'site',
        subjectId: me.siteId,
        what: 'site changed',
        before: { name, timeZone },
        after: body,
      } as const
      await noteChange(write, me, note, clock())
      return { siteId: me.siteId, ...body }
    }),
  )
}
