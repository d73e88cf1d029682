import { expect, it } from 'vitest'
import { encodedWithin, fitWithin } from './fit-picture.ts'

it.each([
  ['4000 by 3000 lying', { width: 4000, height: 3000 }, { width: 1600, height: 1200 }],
  ['3024 by 4032 standing', { width: 3024, height: 4032 }, { width: 1200, height: 1600 }],
  ['smaller than that: never scaled up', { width: 640, height: 480 }, { width: 640, height: 480 }],
  ['a strip: no side becomes nothing', { width: 16_000, height: 2 }, { width: 1600, height: 1 }],
])('a picture of %s fits 1600 pixels', (_, picture, fitted) => {
  expect(fitWithin(picture, 1600)).toEqual(fitted)
})

/** An encoder whose picture has this many bytes at full quality. */
const encoderOf = (bytes: number) => {
  const tried: number[] = []
  const encode = (quality: number) => {
    tried.push(quality)
    return Promise.resolve(new Blob([new Uint8Array(Math.round(bytes * quality))]))
  }
  return { tried, encode }
}

it.each([
  [1200, [0.8]],
  [1500, [0.8, 0.7, 0.6]],
  [9000, [0.8, 0.7, 0.6, 0.5, 0.4, 0.3]],
])('quality is lowered from 0.8 until %i bytes fit 1000, and to 0.3 at least', async (bytes, qualities) => {
  const { tried, encode } = encoderOf(bytes)
  const { size } = await encodedWithin(encode, 1000)
  expect(tried).toEqual(qualities)
  expect(size).toBe(Math.round(bytes * qualities.at(-1)!))
})
