import { describe, expect, it } from 'vitest'
import { type CordAtHand, type CordToCut, cuttingPlan, type PieceToCut } from './cutting-plan.ts'

const aReel = (id: string, metres: number, about: Partial<CordAtHand> = {}): CordAtHand => ({
  id,
  lotId: `lot of ${id}`,
  label: id,
  batch: 'B-1',
  metres,
  expiresOn: null,
  ...about,
})
/** Five rings round a stem of 22 mm, six wraps in one piece of so many millimetres. */
const aPiece = (tag: string, pieceMm: number): PieceToCut => ({ tag, need: { pieceMm, rings: 5, wraps: 6, stemDiameterMm: 22 } })
const planOf = (job: Partial<CordToCut>) => cuttingPlan({ pieces: [], issued: [], inStore: [], ...job })
const cutsOf = (job: Partial<CordToCut>) =>
  planOf(job).reels.map(({ label, pieces, left, isScrap }) => [label, pieces.map(({ tag }) => tag), left, isScrap])

describe('what is cut from which reel', () => {
  it('a part reel of 1.6 m is used up, the longest piece first, and the whole reel stays whole', () => {
    const pieces = [aPiece('BH-1', 700), aPiece('BH-2', 900)]
    const { reels, short, waste } = planOf({ pieces, inStore: [aReel('R1', 8), aReel('R2', 1.6)] })
    expect(reels).toEqual([
      {
        lotId: 'lot of R2',
        label: 'R2',
        batch: 'B-1',
        length: 1600,
        left: 0,
        isScrap: false,
        pieces: [
          { tag: 'BH-2', length: 900, count: 1, says: '5 rings: wind 6 wraps on a bar of 22.0\u00a0mm' },
          { tag: 'BH-1', length: 700, count: 1, says: '5 rings: wind 6 wraps on a bar of 22.0\u00a0mm' },
        ],
      },
    ])
    expect(short).toEqual([])
    expect(waste).toEqual({ wasted: 0, share: 0, bound: 0 })
  })

  it('an end of less than half a metre is scrap, one of half a metre goes back', () => {
    expect(cutsOf({ pieces: [aPiece('BH-1', 700)], inStore: [aReel('R1', 1.199)] })).toEqual([['R1', ['BH-1'], 499, true]])
    expect(cutsOf({ pieces: [aPiece('BH-1', 700)], inStore: [aReel('R1', 1.2)] })).toEqual([['R1', ['BH-1'], 500, false]])
  })

  it('of 1199 mm with 700 mm cut 499 are wasted: 41.6 % of what is used up, and no cutting wastes less', () => {
    const { waste } = planOf({ pieces: [aPiece('BH-1', 700)], inStore: [aReel('R1', 1.199)] })
    expect(waste).toMatchObject({ wasted: 499, bound: 499 })
    expect(waste?.share).toBeCloseTo(0.4162, 4)
  })

  it('what was handed out is cut first though it wastes more, and the bound knows of the better way', () => {
    const job = { pieces: [aPiece('BH-1', 700)], issued: [aReel('R1, issued', 1)], inStore: [aReel('R2', 8)] }
    expect(cutsOf(job)).toEqual([['R1, issued', ['BH-1'], 300, true]])
    expect(planOf(job).waste).toMatchObject({ wasted: 300, bound: 0 })
  })

  it('what finds no room on what was handed out is cut from the store', () => {
    const pieces = [aPiece('BH-1', 700), aPiece('BH-2', 900)]
    const job = { pieces, issued: [aReel('R1, issued', 0.95)], inStore: [aReel('R2', 8)] }
    expect(cutsOf(job)).toEqual([
      ['R1, issued', ['BH-2'], 50, true],
      ['R2', ['BH-1'], 7300, false],
    ])
  })

  it('what expires first is cut first', () => {
    const inStore = [aReel('R1', 8, { expiresOn: '2027-01-01' }), aReel('R2', 8, { expiresOn: '2026-08-01' })]
    expect(cutsOf({ pieces: [aPiece('BH-1', 700)], inStore })).toEqual([['R2', ['BH-1'], 7300, false]])
  })

  it('a piece longer than every reel is named, and the others are cut', () => {
    const pieces = [aPiece('BH-1', 2500), aPiece('BH-2', 900)]
    const { reels, short, waste } = planOf({ pieces, inStore: [aReel('R1', 2)] })
    expect(reels.flatMap((reel) => reel.pieces.map(({ tag }) => tag))).toEqual(['BH-2'])
    expect(short).toEqual(['BH-1: 2.5\u00a0m in one piece, and no reel left is as long'])
    expect(waste).toMatchObject({ wasted: 0, bound: 0 })
  })

  it('without any reel nothing is cut and nothing wasted', () => {
    expect(planOf({ pieces: [aPiece('BH-1', 700)] })).toEqual({
      reels: [],
      short: ['BH-1: 0.7\u00a0m in one piece, and no reel left is as long'],
      waste: null,
    })
  })
})
