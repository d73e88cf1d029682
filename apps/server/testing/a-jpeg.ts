import { createHash } from 'node:crypto'

interface JpegParts {
  width?: number
  height?: number
  /** Bytes of picture data; with other parts the same, another number makes another picture. */
  dataLength?: number
}

const segment = (marker: number, ...body: number[]) => [0xff, marker, (body.length + 2) >> 8, (body.length + 2) & 0xff, ...body]

/** Built as a JPEG is, segment by segment; what it shows is nothing. */
export function aJpeg({ width = 40, height = 30, dataLength = 50 }: JpegParts = {}): Uint8Array<ArrayBuffer> {
  const frame = [8, height >> 8, height & 0xff, width >> 8, width & 0xff, 1, 1, 0x11, 0]
  const head = [
    0xff,
    0xd8,
    ...segment(0xe0, 0x4a, 0x46, 0x49, 0x46, 0),
    ...segment(0xc0, ...frame),
    ...segment(0xda, 1, 1, 0, 0, 63, 0),
  ]
  const jpeg = new Uint8Array(head.length + dataLength + 2).fill(0x55)
  jpeg.set(head)
  jpeg.set([0xff, 0xd9], head.length + dataLength)
  return jpeg
}

export const digestOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex')
