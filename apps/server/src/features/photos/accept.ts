import { createHash } from 'node:crypto'
import { photoLimits } from '@glandkeeper/contract/photos'
import { Refusal } from '../../platform/problem.ts'
import { type PictureSize, readJpeg } from './read-jpeg.ts'

interface SentPhoto {
  readonly content: Uint8Array
  readonly thumbnail: Uint8Array
}

/**
 * Judges a photo and its thumbnail by their bytes, whatever a header or a name says of them.
 *
 * @returns the size of the photo in pixels
 * @throws Refusal `photo/digest-differs`, `photo/not-a-jpeg` or `photo/too-large`
 */
export function judgePhoto(digest: string, { content, thumbnail }: SentPhoto): PictureSize {
  const found = createHash('sha256').update(content).digest('hex')
  if (found !== digest) throw new Refusal('photo/digest-differs', `the SHA-256 of what was sent is ${found}`)
  judgePicture('thumbnail', thumbnail, photoLimits.thumbnail)
  return judgePicture('photo', content, photoLimits)
}

function judgePicture(
  name: 'photo' | 'thumbnail',
  bytes: Uint8Array,
  limits: { readonly mostBytes: number; readonly mostPixelsASide: number },
): PictureSize {
  if (bytes.length > limits.mostBytes)
    throw new Refusal('photo/too-large', `the ${name} has ${bytes.length} bytes, at most ${limits.mostBytes}`)
  const size = readJpeg(bytes)
  if (size === null) throw new Refusal('photo/not-a-jpeg', `the ${name} is no whole JPEG`)
  const { width, height } = size
  if (Math.max(width, height) > limits.mostPixelsASide)
    throw new Refusal('photo/too-large', `the ${name} is ${width} by ${height} pixels, at most ${limits.mostPixelsASide} a side`)
  return size
}
