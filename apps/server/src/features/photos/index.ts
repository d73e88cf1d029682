import type { FastifyInstance, FastifyReply } from 'fastify'
import { sendPhoto, showPhoto, showThumbnail } from '@glandkeeper/contract/photos'
import { Refusal } from '../../platform/problem.ts'
import { type Platform, route } from '../../platform/route.ts'
import { judgePhoto } from './accept.ts'

export function photoRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, sendPhoto, async ({ params: { digest }, body, me }) => {
    const { width, height } = judgePhoto(digest, body)
    const key = { siteId: me.siteId, digest }
    const photo = {
      ...key,
      type: 'image/jpeg',
      width,
      height,
      content: Buffer.from(body.content),
      thumbnail: Buffer.from(body.thumbnail),
      personId: me.personId,
      receivedAt: clock(),
    }
    return store.write(async (write) => {
      // A device that lost the answer sends it again: the picture is there, and nothing is doubled.
      const isHere = (await write.photo.count({ where: key })) > 0
      if (!isHere) await write.photo.create({ data: photo, select: { digest: true } })
      return { outcome: isHere ? ('already' as const) : ('kept' as const) }
    })
  })

  route(app, platform, showPhoto, async ({ params: { digest }, me, reply }) => {
    const where = { siteId_digest: { siteId: me.siteId, digest } }
    const photo = await store.read.photo.findUnique({ where, select: { content: true } })
    return found(photo?.content, digest, reply)
  })

  route(app, platform, showThumbnail, async ({ params: { digest }, me, reply }) => {
    const where = { siteId_digest: { siteId: me.siteId, digest } }
    const photo = await store.read.photo.findUnique({ where, select: { thumbnail: true } })
    return found(photo?.thumbnail, digest, reply)
  })
}

/** Under its digest a picture never changes; one that is not here yet may arrive, so only those found are kept. */
function found(picture: Uint8Array<ArrayBuffer> | undefined, digest: string, reply: FastifyReply): Uint8Array<ArrayBuffer> {
  if (picture === undefined) throw new Refusal('photo/unknown', digest)
  void reply.header('cache-control', 'private, max-age=31536000, immutable')
  return picture
}
