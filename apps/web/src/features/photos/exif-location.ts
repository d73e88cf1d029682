/** Fields of a place, with the type and count each must have: tags relating to GPS, EXIF 2.2, table 12. */
const BYTE = 1
const ASCII = 2
const RATIONAL = 5
const placeFields = [
  { tag: 0x00, type: BYTE, count: 4 },
  { tag: 0x01, type: ASCII, count: 2 },
  { tag: 0x02, type: RATIONAL, count: 3 },
  { tag: 0x03, type: ASCII, count: 2 },
  { tag: 0x04, type: RATIONAL, count: 3 },
  { tag: 0x05, type: BYTE, count: 1 },
  { tag: 0x06, type: RATIONAL, count: 1 },
  { tag: 0x10, type: ASCII, count: 2 },
  { tag: 0x11, type: RATIONAL, count: 1 },
] as const
/** Latitude and longitude with their sides: without one of them there is no place. */
const NEEDED = [0x01, 0x02, 0x03, 0x04]

const GPS_POINTER = 0x8825
const LONG = 4
const bytesOfOne: Readonly<Record<number, number>> = { [BYTE]: 1, [ASCII]: 1, [RATIONAL]: 8 }
const EXIF_MARK = [0x45, 0x78, 0x69, 0x66, 0, 0]

interface Tiff {
  readonly view: DataView
  readonly isLittle: boolean
}
interface Field {
  readonly tag: number
  readonly type: number
  readonly count: number
  readonly bytes: Uint8Array
}

/**
 * Where a photo was taken, and nothing else that its camera wrote: latitude, longitude, height and the direction looked
 * in, without time, device or names.
 *
 * @param jpeg the file as the camera made it; its first 128 kB are enough
 * @returns a whole APP1 segment to put after the start marker of another JPEG; null when there is no place in it, or
 * when it cannot be read. Never throws.
 */
export function locationSegment(jpeg: Uint8Array): Uint8Array<ArrayBuffer> | null {
  const tiff = tiffIn(jpeg)
  if (!tiff) return null
  const place = placeIn(tiff)
  return NEEDED.every((tag) => place.some((field) => field.tag === tag)) ? segmentWith(place, tiff.isLittle) : null
}

/** The same JPEG with a segment after its start marker. */
export function withSegment(jpeg: Uint8Array, segment: Uint8Array): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(jpeg.length + segment.length)
  whole.set(jpeg.subarray(0, 2))
  whole.set(segment, 2)
  whole.set(jpeg.subarray(2), 2 + segment.length)
  return whole
}

/** The first EXIF block before the picture data. */
function tiffIn(jpeg: Uint8Array): Tiff | null {
  const view = new DataView(jpeg.buffer, jpeg.byteOffset, jpeg.byteLength)
  if (jpeg[0] !== 0xff || jpeg[1] !== 0xd8) return null
  for (let at = 2; jpeg[at] === 0xff && at + 4 <= jpeg.length;) {
    const marker = jpeg[at + 1]
    const end = at + 2 + view.getUint16(at + 2)
    if (marker === 0xda || end > jpeg.length) return null
    const isExif = marker === 0xe1 && EXIF_MARK.every((byte, index) => jpeg[at + 4 + index] === byte)
    if (isExif && end >= at + 18) return headed(new DataView(jpeg.buffer, jpeg.byteOffset + at + 10, end - at - 10))
    at = end
  }
  return null
}

function headed(view: DataView): Tiff | null {
  const order = view.getUint16(0)
  const isLittle = order === 0x4949
  return (isLittle || order === 0x4d4d) && view.getUint16(2, isLittle) === 42 ? { view, isLittle } : null
}

function placeIn(tiff: Tiff): Field[] {
  const { view, isLittle } = tiff
  const pointer = entryAt(tiff, view.getUint32(4, isLittle), GPS_POINTER)
  if (pointer === null || view.getUint16(pointer + 2, isLittle) !== LONG) return []
  const directory = view.getUint32(pointer + 8, isLittle)
  return placeFields.flatMap((field) => {
    const entry = entryAt(tiff, directory, field.tag)
    const bytes = entry === null ? null : valueOf(tiff, entry, field)
    return bytes === null ? [] : [{ ...field, bytes }]
  })
}

/** Where in the block the entry of a tag begins, twelve bytes long; null when the directory has none, or is cut off. */
function entryAt({ view, isLittle }: Tiff, directory: number, tag: number): number | null {
  if (directory + 2 > view.byteLength) return null
  const count = view.getUint16(directory, isLittle)
  if (directory + 2 + 12 * count > view.byteLength) return null
  for (let index = 0; index < count; index += 1) {
    const at = directory + 2 + 12 * index
    if (view.getUint16(at, isLittle) === tag) return at
  }
  return null
}

/** Up to four bytes stand in the entry itself, more of them elsewhere in the block. */
function valueOf({ view, isLittle }: Tiff, entry: number, { type, count }: (typeof placeFields)[number]): Uint8Array | null {
  if (view.getUint16(entry + 2, isLittle) !== type || view.getUint32(entry + 4, isLittle) !== count) return null
  const length = bytesOfOne[type]! * count
  const at = length <= 4 ? entry + 8 : view.getUint32(entry + 8, isLittle)
  if (at + length > view.byteLength) return null
  const fractions = type === RATIONAL ? count : 0
  // Some cameras without a fix write 0/0: that says nothing.
  for (let index = 0; index < fractions; index += 1) if (view.getUint32(at + 8 * index + 4, isLittle) === 0) return null
  return new Uint8Array(view.buffer, view.byteOffset + at, length)
}

/** A block with one entry, the pointer, and the directory it points to; bytes stay in the order they were in. */
function segmentWith(fields: readonly Field[], isLittle: boolean): Uint8Array<ArrayBuffer> {
  const directory = 8 + 2 + 12 + 4
  let free = directory + 2 + 12 * fields.length + 4
  const long = fields.filter(({ bytes }) => bytes.length > 4).reduce((sum, { bytes }) => sum + bytes.length, 0)
  const segment = new Uint8Array(10 + free + long)
  const length = segment.length - 2
  segment.set([0xff, 0xe1, length >> 8, length & 0xff, ...EXIF_MARK])
  const view = new DataView(segment.buffer, 10)
  view.setUint16(0, isLittle ? 0x4949 : 0x4d4d)
  view.setUint16(2, 42, isLittle)
  view.setUint32(4, 8, isLittle)
  view.setUint16(8, 1, isLittle)
  const writeEntry = (at: number, tag: number, type: number, count: number) => {
    view.setUint16(at, tag, isLittle)
    view.setUint16(at + 2, type, isLittle)
    view.setUint32(at + 4, count, isLittle)
  }
  writeEntry(10, GPS_POINTER, LONG, 1)
  view.setUint32(18, directory, isLittle)
  view.setUint16(directory, fields.length, isLittle)
  for (const [index, { tag, type, count, bytes }] of fields.entries()) {
    const at = directory + 2 + 12 * index
    writeEntry(at, tag, type, count)
    const isLong = bytes.length > 4
    if (isLong) view.setUint32(at + 8, free, isLittle)
    segment.set(bytes, 10 + (isLong ? free : at + 8))
    if (isLong) free += bytes.length
  }
  return segment
}
