import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type ChainState, drawChain, LINK } from './chain-geometry.ts'

const whole: ChainState = { entries: 1000, provedTo: 1000, brokenAt: null, sealedAt: null }

describe('the drawn chain', () => {
  it('has a link for each entry while there is room, and as many as fit beyond that', () => {
    expect(drawChain({ ...whole, entries: 3, provedTo: 3 }, 400).links).toHaveLength(3)
    expect(drawChain(whole, 400).links).toHaveLength(22)
    expect(drawChain({ ...whole, entries: 0, provedTo: 0 }, 400)).toEqual({ links: [], breakX: null, sealX: null })
  })

  it('is solid as far as it was proved', () => {
    expect(drawChain(whole, 400).links.every(({ isProved }) => isProved)).toBe(true)
    expect(drawChain({ ...whole, provedTo: 0 }, 400).links.some(({ isProved }) => isProved)).toBe(false)
    expect(drawChain({ ...whole, provedTo: 999 }, 400).links.filter(({ isProved }) => isProved)).toHaveLength(21)
    expect(drawChain({ ...whole, provedTo: 500 }, 400).links.filter(({ isProved }) => isProved)).toHaveLength(11)
  })

  it('is broken in one link at the place of the break, and nothing after it is proved', () => {
    const { links, breakX } = drawChain({ ...whole, brokenAt: 501 }, 400)
    expect(links.flatMap(({ isBroken }, index) => (isBroken ? [index] : []))).toEqual([11])
    expect(links.flatMap(({ isProved }, index) => (isProved ? [index] : []))).toEqual([...Array(11).keys()])
    expect(breakX).toBe(11 * 18 + 11)
  })

  it('keeps the break, the seal and every link inside its width', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1_000_000 }),
        fc.integer({ min: 30, max: 1200 }),
        fc.nat(1_000_002),
        fc.nat(1_000_002),
        (entries, width, brokenAt, sealedAt) => {
          const { links, breakX, sealX } = drawChain({ entries, provedTo: entries, brokenAt, sealedAt }, width)
          const ends = [...links.map(({ x }) => x + LINK), breakX ?? Number.NaN, sealX ?? Number.NaN]
          expect(ends.every((end) => end >= 0 && end <= width)).toBe(true)
          expect(links.filter(({ isBroken }) => isBroken)).toHaveLength(1)
        },
      ),
    )
  })
})
