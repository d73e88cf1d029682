import { createHash } from 'node:crypto'
import { PhotoDigest } from '@glandkeeper/contract/events'
import { expect, it } from 'vitest'
import { digestOf } from './digest.ts'

it('the digest of a photo is the one the server works out, in the form an entry names it by', () => {
  // Lengths round the blocks of 64 bytes, and one of a photo.
  for (const length of [0, 55, 56, 64, 1000, 900_000]) {
    const bytes = Uint8Array.from({ length }, (_, index) => (index * 31) & 0xff)
    expect(digestOf(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'))
    expect(PhotoDigest.safeParse(digestOf(bytes)).success).toBe(true)
  }
})
