import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { aJpeg } from '../../../testing/a-jpeg.ts'
import { readJpeg } from './read-jpeg.ts'

const bytesOf = (base64: string) => new Uint8Array(Buffer.from(base64, 'base64'))

/** A grey ramp of 20 by 12 pixels, as an encoder wrote it. */
const baseline = bytesOf(
  '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAA0JCgsKCA0LCgsODg0PEyAVExISEyccHhcgLikxMC4pLSwzOko+MzZGNywtQFdBRkxOUlNSMj5aYVpQYEpRUk//' +
    'wAALCAAMABQBAREA/8QAFgABAQEAAAAAAAAAAAAAAAAAAAUH/8QAGhAAAQUBAAAAAAAAAAAAAAAAAAQVFlJjof/aAAgBAQAAPwC5KtOiVadEq06Y+4qbhxU3Dipuf//Z',
)
/** The same in several scans, as pages load it. */
const progressive = bytesOf(
  '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAA0JCgsKCA0LCgsODg0PEyAVExISEyccHhcgLikxMC4pLSwzOko+MzZGNywtQFdBRkxOUlNSMj5aYVpQYEpRUk//' +
    'wgALCAAMABQBAREA/8QAFgABAQEAAAAAAAAAAAAAAAAAAAQG/9oACAEBAAAAAbjHn//EABcQAQADAAAAAAAAAAAAAAAAAAACExT/2gAIAQEAAQUC1NTUsksksk//' +
    'xAAWEAEBAQAAAAAAAAAAAAAAAAAxACD/2gAIAQEABj8CZnH/xAAWEAEBAQAAAAAAAAAAAAAAAAAAYRD/2gAIAQEAAT8h2qiij//aAAgBAQAAABAD/8QAFxAAAwEA' +
    'AAAAAAAAAAAAAAAAABHwIP/aAAgBAQABPxCGQyHj/wD/2Q==',
)

describe('the size of a JPEG', () => {
  it('is read from a picture in one scan and in several, with fill bytes and restart markers or without', () => {
    expect(readJpeg(baseline)).toEqual({ width: 20, height: 12 })
    expect(readJpeg(progressive)).toEqual({ width: 20, height: 12 })
    expect(readJpeg(new Uint8Array([0xff, 0xd8, 0xff, 0xff, ...baseline.subarray(2)]))).toEqual({ width: 20, height: 12 })
    const restarted = aJpeg({ width: 4096, height: 300 })
    restarted.set([0xff, 0x00, 0xff, 0xd3], restarted.length - 20)
    expect(readJpeg(restarted)).toEqual({ width: 4096, height: 300 })
  })

  it('is not read from part of a picture, wherever it was cut off', () => {
    for (const whole of [baseline, progressive])
      for (let length = 0; length < whole.length; length += 1)
        expect([length, readJpeg(whole.subarray(0, length))]).toEqual([length, null])
  })

  it('is not read where something stands before, between or after its segments', () => {
    expect(readJpeg(new Uint8Array([0x20, ...baseline]))).toBeNull()
    expect(readJpeg(new Uint8Array([0xff, 0xd8, 0x20, ...baseline.subarray(2)]))).toBeNull()
    expect(readJpeg(new Uint8Array([...baseline, 0x20]))).toBeNull()
  })

  it('is not read without a scan, without width or height, from two frames, or of a kind no browser shows', () => {
    const frameAt = baseline.findIndex((byte, at) => byte === 0xff && baseline[at + 1] === 0xc0)
    const scanAt = baseline.findIndex((byte, at) => byte === 0xff && baseline[at + 1] === 0xda)
    const frame = baseline.subarray(frameAt, frameAt + 13)
    const changed = (...at: [number, number][]) => {
      const copy = baseline.slice()
      for (const [offset, byte] of at) copy[frameAt + offset] = byte
      return copy
    }
    expect(readJpeg(new Uint8Array([...baseline.subarray(0, scanAt), 0xff, 0xd9]))).toBeNull()
    expect(readJpeg(changed([6, 0]))).toBeNull()
    expect(readJpeg(changed([8, 0]))).toBeNull()
    expect(readJpeg(new Uint8Array([...baseline.subarray(0, frameAt), ...frame, ...baseline.subarray(frameAt)]))).toBeNull()
    expect(readJpeg(changed([1, 0xc3]))).toBeNull()
  })

  it('never throws, whatever the bytes', () => {
    const damaged = fc.tuple(fc.constantFrom(baseline, progressive), fc.nat(), fc.nat(255)).map(([whole, at, byte]) => {
      const copy = whole.slice()
      copy[at % copy.length] = byte
      return copy
    })
    fc.assert(
      fc.property(fc.oneof(damaged, fc.uint8Array({ maxLength: 400 })), (bytes) => {
        const size = readJpeg(bytes)
        expect(size === null || (size.width > 0 && size.height > 0)).toBe(true)
      }),
      { numRuns: 2000 },
    )
  })
})
