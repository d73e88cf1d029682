import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { PhotoDigest } from './events.ts'
import { everybody } from './roles.ts'

/** What a photo may be: a device makes it far smaller, and the register refuses what would swell it. */
export const photoLimits = {
  mostBytes: 3_000_000,
  mostPixelsASide: 4096,
  thumbnail: { mostBytes: 60_000, mostPixelsASide: 400 },
} as const

const byDigest = z.strictObject({ digest: PhotoDigest })
const jpeg = z.instanceof(Uint8Array)

/**
 * Photo and thumbnail in one request, so that neither is ever there without the other. Both are JPEG; the address is
 * the SHA-256 of the photo alone. The first to arrive stays: sent again, with whatever thumbnail, it is `already` there.
 *
 * A photo that no entry names is kept too. Its entry may be late, or refused and waiting on the device for somebody to
 * put it right; and who asks by digest has read the entry that names it.
 */
export const sendPhoto = endpoint({
  method: 'PUT',
  path: '/api/photos/:digest',
  who: everybody,
  params: byDigest,
  body: z.strictObject({ content: jpeg, thumbnail: jpeg }),
  bodyKind: 'files',
  ok: z.object({ outcome: z.enum(['kept', 'already']) }),
  status: 200,
})

export const showPhoto = endpoint({
  method: 'GET',
  path: '/api/photos/:digest',
  who: everybody,
  params: byDigest,
  ok: jpeg,
  okKind: 'jpeg',
  status: 200,
})

export const showThumbnail = endpoint({
  method: 'GET',
  path: '/api/photos/:digest/thumbnail',
  who: everybody,
  params: byDigest,
  ok: jpeg,
  okKind: 'jpeg',
  status: 200,
})
