import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { locationSegment, withSegment } from './exif-location.ts'

type Entry = readonly [tag: number, type: number, count: number, bytes: readonly number[]]

const sizes: Readonly<Record<number, number>> = { 1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 7: 1, 10: 8 }

/** Bytes of an EXIF block as a camera lays it out: first directory with the pointer, other fields, then GPS. */
function exifBlock(isLittle: boolean, camera: readonly Entry[], gps: readonly Entry[]): number[] {
  const number = (value: number, length: number) => {
    const bytes = Array.from({ length }, (_, index) => (value >>> (8 * index)) & 0xff)
    return isLittle ? bytes : bytes.toReversed()
  }
  const directory = (entries: readonly Entry[], at: number) => {
    const tail: number[] = []
    const free = at + 2 + 12 * entries.length + 4
    const head = entries.flatMap(([tag, type, count, bytes]) => {
      const isLong = sizes[type]! * count > 4
      const value = isLong ? number(free + tail.length, 4) : [...bytes, 0, 0, 0, 0].slice(0, 4)
      if (isLong) tail.push(...bytes)
      return [...number(tag, 2), ...number(type, 2), ...number(count, 4), ...value]
    })
    return [...number(entries.length, 2), ...head, 0, 0, 0, 0, ...tail]
  }
  const lengthOfFirst = directory([...camera, [0x8825, 4, 1, [0, 0, 0, 0]]], 8).length
  const first = directory([...camera, [0x8825, 4, 1, number(8 + lengthOfFirst, 4)]], 8)
  return [
    ...(isLittle ? [0x49, 0x49] : [0x4d, 0x4d]),
    ...number(42, 2),
    ...number(8, 4),
    ...first,
    ...directory(gps, 8 + lengthOfFirst),
  ]
}

const segment = (marker: number, body: readonly number[]) => [
  0xff,
  marker,
  (body.length + 2) >> 8,
  (body.length + 2) & 0xff,
  ...body,
]
const letters = (text: string) => [...new TextEncoder().encode(text)]
const exif = letters('Exif\0\0')
const rest = [...segment(0xdb, [0, 1, 2]), ...segment(0xda, [0]), 1, 2, 3, 0xff, 0xd9]
const jfif = segment(0xe0, [0x4a, 0x46, 0x49, 0x46, 0])
const jpegWith = (block: readonly number[]) =>
  new Uint8Array([0xff, 0xd8, ...jfif, ...segment(0xe1, [...exif, ...block]), ...rest])

const rationals = (isLittle: boolean, ...values: number[]) =>
  values.flatMap((value) => {
    const bytes = [value & 0xff, (value >> 8) & 0xff, (value >> 16) & 0xff, 0]
    return isLittle ? bytes : bytes.toReversed()
  })

/** 54° 31′ 12.5″ N, 3° 0′ 40″ W: a place as a camera writes it. */
const place = (isLittle: boolean): Entry[] => [
  [0x00, 1, 4, [2, 3, 0, 0]],
  [0x01, 2, 2, letters('N\0')],
  [0x02, 5, 3, rationals(isLittle, 54, 1, 31, 1, 125, 10)],
  [0x03, 2, 2, letters('W\0')],
  [0x04, 5, 3, rationals(isLittle, 3, 1, 0, 1, 40, 1)],
]
const camera: Entry[] = [
  [0x010f, 2, 12, letters('INVENTED CO\0')],
  [0x0112, 3, 1, [0, 6]],
]
const more = (isLittle: boolean): Entry[] => [
  [0x05, 1, 1, [0]],
  [0x06, 5, 1, rationals(isLittle, 88, 1)],
  [0x07, 5, 3, rationals(isLittle, 7, 1, 10, 1, 0, 1)],
  [0x10, 2, 2, letters('T\0')],
  [0x11, 5, 1, rationals(isLittle, 270, 1)],
  [0x1b, 7, 6, letters('SECRET')],
  [0x1d, 2, 11, letters('2026:05:03\0')],
]

describe.each([
  ['big', false],
  ['little', true],
])('the place in a photo written with the %s end first', (_, isLittle) => {
  it('is taken out alone: side, latitude, longitude, height and direction, in a segment that says so', () => {
    const whole = locationSegment(jpegWith(exifBlock(isLittle, camera, [...place(isLittle), ...more(isLittle)])))
    const kept = more(isLittle).filter(([tag]) => [0x05, 0x06, 0x10, 0x11].includes(tag))
    const block = exifBlock(isLittle, [], [...place(isLittle), ...kept])
    expect([...whole!]).toEqual(segment(0xe1, [...exif, ...block]))
  })

  it('holds nothing of the camera, the time, or what somebody named the place', () => {
    const whole = locationSegment(jpegWith(exifBlock(isLittle, camera, [...place(isLittle), ...more(isLittle)])))
    expect(String.fromCharCode(...whole!)).not.toMatch(/INVENTED|SECRET|2026/)
  })

  it('put after the start of another JPEG is found there again', () => {
    const whole = locationSegment(jpegWith(exifBlock(isLittle, camera, place(isLittle))))!
    const other = new Uint8Array([0xff, 0xd8, ...jfif, ...rest])
    const spliced = withSegment(other, whole)
    expect([...spliced]).toEqual([0xff, 0xd8, ...whole, ...jfif, ...rest])
    expect(locationSegment(spliced)).toEqual(whole)
  })

  it('is none without latitude, without a side, or from a camera that had no fix and wrote 0/0', () => {
    for (const missing of [0x01, 0x02, 0x03, 0x04]) {
      const others = place(isLittle).filter(([tag]) => tag !== missing)
      expect(locationSegment(jpegWith(exifBlock(isLittle, camera, others)))).toBeNull()
    }
    const noFix = place(isLittle).map((entry): Entry =>
      entry[0] === 0x02 ? [0x02, 5, 3, rationals(isLittle, 0, 0, 0, 0, 0, 0)] : entry,
    )
    expect(locationSegment(jpegWith(exifBlock(isLittle, camera, noFix)))).toBeNull()
  })

  it('is none when a field has another type or count than it must have', () => {
    for (const wrong of [
      [0x02, 5, 2, rationals(isLittle, 54, 1, 31, 1)],
      [0x02, 7, 24, rationals(isLittle, 54, 1, 31, 1, 125, 10)],
      [0x02, 10, 3, rationals(isLittle, 54, 1, 31, 1, 125, 10)],
      [0x01, 2, 40, Array.from({ length: 40 }, () => 0x4e)],
    ] as const) {
      const fields = place(isLittle).map((entry): Entry => (entry[0] === wrong[0] ? wrong : entry))
      expect(locationSegment(jpegWith(exifBlock(isLittle, camera, fields)))).toBeNull()
    }
  })
})

describe('a file that cannot be read', () => {
  const whole = jpegWith(exifBlock(true, camera, place(true)))

  it('has no place: no JPEG, no EXIF, or cut off before its end', () => {
    expect(locationSegment(new Uint8Array())).toBeNull()
    expect(locationSegment(new Uint8Array([0x89, 0x50, 0x4e, 0x47]))).toBeNull()
    expect(locationSegment(new Uint8Array([0xff, 0xd8, ...jfif, ...rest]))).toBeNull()
    const endOfExif = whole.length - rest.length
    for (let length = 0; length < endOfExif; length += 1)
      expect([length, locationSegment(whole.subarray(0, length))]).toEqual([length, null])
    expect(locationSegment(whole.subarray(0, endOfExif))).not.toBeNull()
  })

  it('never throws, and gives a segment that can be read again or null', () => {
    const changes = fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { minLength: 1, maxLength: 6 })
    const damaged = changes.map((changed) => {
      const copy = whole.slice()
      for (const [at, byte] of changed) copy[at] = byte
      return copy
    })
    fc.assert(
      fc.property(fc.oneof(damaged, fc.uint8Array({ maxLength: 300 })), (bytes) => {
        const found = locationSegment(bytes)
        if (found) expect(locationSegment(withSegment(new Uint8Array([0xff, 0xd8]), found))).toEqual(found)
      }),
      { numRuns: 3000 },
    )
  })
})
