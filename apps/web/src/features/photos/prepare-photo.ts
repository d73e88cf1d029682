import { photoLimits } from '@glandkeeper/contract/photos'
import { digestOf } from './digest.ts'
import { locationSegment, withSegment } from './exif-location.ts'
import { encodedWithin, fitWithin } from './fit-picture.ts'

const MOST_PIXELS = 1600
const MOST_BYTES = 1_000_000
const MOST_THUMBNAIL_PIXELS = 240
/** A camera writes what it knows at the start of the file. */
const HEAD_BYTES = 128 * 1024

/** What goes to the server, and the name an entry knows it by. */
export interface PreparedPhoto {
  readonly digest: string
  readonly content: Uint8Array<ArrayBuffer>
  readonly thumbnail: Uint8Array<ArrayBuffer>
}

/** The file is no picture this browser can show. */
export class NotAPicture extends Error {}

/**
 * A picture from the camera or the album, made small and upright, as JPEG with its thumbnail. It is encoded anew, so
 * that nothing the camera wrote into the file goes along; with `keepLocation` the place alone is put back, where the
 * file is a JPEG that holds one.
 *
 * @throws NotAPicture
 */
export async function preparePhoto(original: Blob, { keepLocation }: { keepLocation: boolean }): Promise<PreparedPhoto> {
  const bitmap = await createImageBitmap(original, { imageOrientation: 'from-image' }).catch((cause: unknown) => {
    throw new NotAPicture('this browser cannot read the picture', { cause })
  })
  try {
    const picture = await asJpeg(bitmap, MOST_PIXELS, MOST_BYTES)
    const thumbnail = await asJpeg(bitmap, MOST_THUMBNAIL_PIXELS, photoLimits.thumbnail.mostBytes)
    const place = keepLocation ? locationSegment(await bytesOf(original.slice(0, HEAD_BYTES))) : null
    const content = place === null ? picture : withSegment(picture, place)
    return { digest: digestOf(content), content, thumbnail }
  } finally {
    bitmap.close()
  }
}

async function asJpeg(bitmap: ImageBitmap, mostPixels: number, mostBytes: number): Promise<Uint8Array<ArrayBuffer>> {
  const { width, height } = fitWithin(bitmap, mostPixels)
  const { pen, encode } = canvasOf(width, height)
  // JPEG has no see-through: without a ground it would turn black.
  pen.fillStyle = 'white'
  pen.fillRect(0, 0, width, height)
  pen.imageSmoothingQuality = 'high'
  pen.drawImage(bitmap, 0, 0, width, height)
  return bytesOf(await encodedWithin(encode, mostBytes))
}

interface Canvas {
  readonly pen: CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D
  readonly encode: (quality: number) => Promise<Blob>
}

function canvasOf(width: number, height: number): Canvas {
  const type = 'image/jpeg'
  if (typeof OffscreenCanvas !== 'undefined') {
    const canvas = new OffscreenCanvas(width, height)
    return { pen: drawable(canvas.getContext('2d')), encode: (quality) => canvas.convertToBlob({ type, quality }) }
  }
  const canvas = Object.assign(document.createElement('canvas'), { width, height })
  const encode = (quality: number) =>
    new Promise<Blob>((resolve, reject) => {
      const take = (blob: Blob | null) => (blob ? resolve(blob) : reject(new NotAPicture('the picture could not be made small')))
      canvas.toBlob(take, type, quality)
    })
  return { pen: drawable(canvas.getContext('2d')), encode }
}

function drawable<Pen>(pen: Pen | null): Pen {
  if (pen === null) throw new NotAPicture('this device has no memory left for a picture')
  return pen
}

async function bytesOf(blob: Blob): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await blob.arrayBuffer())
}
