import { mm } from '@glandkeeper/units/quantity'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { seededChance } from '../schedule/seeded-chance.ts'
import { cutFromReels } from './cut-from-reels.ts'
import type { CutInput } from './cutting/cut-input.ts'

const cutOf = (input: CutInput) => {
  const found = cutFromReels(input)
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}
const anyLength = fc.integer({ min: 1_000, max: 30_000 }).map((tenths) => tenths / 10)
const anyInput = fc
  .record({
    reels: fc.array(fc.tuple(anyLength, fc.constantFrom('A', 'B'), fc.constantFrom(null, '2026-05-01', '2027-01-01')), {
      maxLength: 5,
    }),
    pieces: fc.array(fc.tuple(anyLength, fc.integer({ min: 1, max: 3 }), fc.integer({ min: 0, max: 4 })), { maxLength: 8 }),
    sawCut: fc.constantFrom(mm(0), mm(0), mm(1.5)),
    keepLength: fc.constantFrom(mm(0), mm(300), mm(1000)),
  })
  .map(({ reels, pieces, ...rules }) => ({
    reels: reels.map(([length, batch, expiresOn], at) => ({ id: `R${at}`, length: mm(length), batch, expiresOn })),
    pieces: pieces.map(([length, count, set], at) => ({ id: `p${at}`, setId: `V${set}`, length: mm(length / 3), count })),
    ...rules,
  }))

describe('any cutting', () => {
  it('cuts each piece once or says that it does not, and no reel gives more than it has', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const { reels, notCut } = cutOf(input)
        for (const { id, count } of input.pieces) {
          const all = [...reels, ...notCut].flatMap(({ pieces }) => pieces).filter(({ pieceId }) => pieceId === id)
          expect(all.reduce((sum, piece) => sum + piece.count, 0)).toBe(count)
        }
        for (const { reelId, pieces, used, end } of reels) {
          const reel = input.reels.find(({ id }) => id === reelId)!
          const [own, count] = pieces.reduce(([sum, all], piece) => [sum + piece.length * piece.count, all + piece.count], [0, 0])
          expect(own + (count - 1) * input.sawCut).toBeLessThanOrEqual(reel.length + 1e-6)
          expect(used + end).toBeCloseTo(Math.floor(reel.length * 10 + 1e-6) / 10, 6)
          expect(pieces.map(({ length }) => length)).toEqual(pieces.map(({ length }) => length).toSorted((a, b) => b - a))
        }
      }),
      { numRuns: 60 },
    )
  })

  it('adds up, wastes no less than the bound, and splits no set without saying so', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const { reels, split, totals } = cutOf(input)
        const scrap = reels.reduce((sum, { end, endIs }) => sum + (endIs === 'scrap' ? end : 0), 0)
        const back = reels.reduce((sum, { end, endIs }) => sum + (endIs === 'returned' ? end : 0), 0)
        const used = reels.reduce((sum, reel) => sum + reel.used, 0)
        expect(totals.returned).toBeCloseTo(back, 6)
        expect(totals.wasted).toBeCloseTo(used - totals.cut + scrap, 6)
        expect(totals.bound).toBeLessThanOrEqual(totals.wasted)
        expect(totals.bound).toBeGreaterThanOrEqual(0)
        for (const { setId } of input.pieces) {
          const on = reels.filter(({ pieces }) => pieces.some((piece) => piece.setId === setId))
          const said = split.find((set) => set.setId === setId)
          if (!said) expect(on.length).toBeLessThanOrEqual(1)
          else expect(said.over === 'one batch').toBe(new Set(on.map(({ batch }) => batch)).size === 1)
        }
      }),
      { numRuns: 60 },
    )
  })
})

describe('many sets', () => {
  const job = (sets: number, reels: number) => {
    const chance = seededChance(11)
    const reelLengths = Array.from({ length: reels }, () => 6_000 + chance.below(60_000) / 10)
    const ringLengths = Array.from({ length: sets }, () => 80 + chance.below(3_000) / 10)
    return {
      reels: reelLengths.map((length, at) => ({ id: `R${at}`, length: mm(length), batch: `B${at % 5}`, expiresOn: null })),
      pieces: ringLengths.map((length, at) => ({ id: `p${at}`, setId: `V${at}`, length: mm(length), count: 6 })),
      sawCut: mm(0),
      keepLength: mm(300),
    }
  }
  /** Of the processor, the best of three: the machine does other things meanwhile. */
  const millisecondsFor = (input: CutInput) => {
    const taken = [1, 2, 3].map(() => {
      const begun = process.cpuUsage()
      cutOf(input)
      const { user, system } = process.cpuUsage(begun)
      return (user + system) / 1000
    })
    return Math.min(...taken)
  }

  it('200 of them from 40 reels take well under a second', () => {
    expect(millisecondsFor(job(200, 40))).toBeLessThan(600)
  }, 20_000)

  it('four times as many from four times as many reels take no more than ten times as long', () => {
    expect(millisecondsFor(job(200, 40))).toBeLessThan(10 * Math.max(25, millisecondsFor(job(50, 10))))
  }, 20_000)
})
