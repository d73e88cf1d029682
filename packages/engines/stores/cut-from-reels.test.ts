import { type Millimetre, mm } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import { type CutFromReels, cutFromReels } from './cut-from-reels.ts'
import type { CutInput, Piece, Reel } from './cutting/cut-input.ts'

const aReel = (id: string, length: number, more: Partial<Reel> = {}): Reel => ({
  id,
  batch: 'B1',
  length: mm(length),
  expiresOn: null,
  ...more,
})
const aPiece = (id: string, length: number, count = 1, setId = id): Piece => ({ id, setId, length: mm(length), count })
const anInput = (reels: readonly Reel[], pieces: readonly Piece[], more: Partial<CutInput> = {}): CutInput => ({
  reels,
  pieces,
  sawCut: mm(0),
  keepLength: mm(300),
  ...more,
})
const cutOf = (input: CutInput): CutFromReels => {
  const found = cutFromReels(input)
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}
const onReels = ({ reels }: CutFromReels) =>
  reels.map(({ reelId, pieces }) => [reelId, pieces.map(({ pieceId, count }) => `${count} ${pieceId}`).join(', ')])

describe('cutting from reels', () => {
  it('5 rings of 113.2 from a reel of 8 m leave 8000 - 566 = 7434, which goes back', () => {
    const cut = cutOf(anInput([aReel('R1', 8000)], [aPiece('ring', 113.2, 5, 'V1')]))
    expect(cut.reels).toMatchObject([{ reelId: 'R1', batch: 'B1', used: 566, end: 7434, endIs: 'returned' }])
    expect(cut.totals).toEqual({ cut: 566, wasted: 0, wastedShare: 0, returned: 7434, short: 0, bound: 0, boundShare: 0 })
  })

  it('an end of just the keep length goes back, one a tenth shorter is scrap', () => {
    const ends = [700, 700.1].map((length) => cutOf(anInput([aReel('R1', 1000)], [aPiece('p', length)])).reels[0])
    expect(ends).toMatchObject([
      { end: 300, endIs: 'returned' },
      { end: 299.9, endIs: 'scrap' },
    ])
  })

  it('takes the sets that fill a reel: 700 + 300 and 600 + 400, not the longest two', () => {
    const pieces = [700, 600, 400, 300].map((length) => aPiece(`p${length}`, length))
    const cut = cutOf(anInput([aReel('R1', 1000), aReel('R2', 1000)], pieces))
    expect(
      onReels(cut)
        .map(([, on]) => on)
        .toSorted(),
    ).toEqual(['1 p600, 1 p400', '1 p700, 1 p300'])
    expect(cut.reels.map(({ endIs }) => endIs)).toEqual(['none', 'none'])
  })

  it('a part reel of 650 for rings of 600 wastes 50, so that a whole reel is cut that wastes nothing', () => {
    expect(onReels(cutOf(anInput([aReel('part', 650), aReel('whole', 8000)], [aPiece('ring', 600)])))).toEqual([
      ['whole', '1 ring'],
    ])
  })

  it('of reels that waste nothing the one that expires first is cut, then the shortest', () => {
    const reels = [
      aReel('late', 900, { expiresOn: '2028-01-01' }),
      aReel('soon', 8000, { expiresOn: '2026-12-31' }),
      aReel('never', 900),
    ]
    expect(onReels(cutOf(anInput(reels, [aPiece('ring', 600)])))).toEqual([['soon', '1 ring']])
    expect(onReels(cutOf(anInput([aReel('long', 8000), aReel('part', 900)], [aPiece('ring', 600)])))).toEqual([
      ['part', '1 ring'],
    ])
  })

  it('cuts the longest piece first, whatever set it is of', () => {
    const pieces = [aPiece('a', 100, 2, 'V1'), aPiece('b', 300, 1, 'V2'), aPiece('c', 200, 1, 'V1')]
    expect(onReels(cutOf(anInput([aReel('R1', 8000)], pieces)))).toEqual([['R1', '1 b, 1 c, 2 a']])
  })

  it('a cut of 2 behind each of 3 pieces of 100 leaves 694 of 1000; the last cut is saved where the piece ends the reel', () => {
    const sawCut = mm(2)
    const cut = cutOf(anInput([aReel('R1', 1000)], [aPiece('p', 100, 3, 'V1')], { sawCut }))
    expect([cut.reels[0]?.used, cut.reels[0]?.end, cut.totals.wasted]).toEqual([306, 694, 6])
    const whole = cutOf(anInput([aReel('R1', 304)], [aPiece('p', 100, 3, 'V1')], { sawCut }))
    expect([whole.reels[0]?.used, whole.reels[0]?.endIs, whole.totals.wasted]).toEqual([304, 'none', 4])
    expect(cutOf(anInput([aReel('R1', 303.9)], [aPiece('p', 100, 3, 'V1')], { sawCut })).notCut).toHaveLength(1)
  })
})

describe('a set', () => {
  const rings = aPiece('ring', 200, 5, 'V1')

  it('comes from one reel though two shorter ones would waste less', () => {
    // 600 + 400 use both part reels up; from the whole reel an end of 200 is scrap.
    const reels = [aReel('p1', 600), aReel('p2', 400), aReel('whole', 1200)]
    const cut = cutOf(anInput(reels, [rings]))
    expect(onReels(cut)).toEqual([['whole', '5 ring']])
    expect(cut.totals).toMatchObject({ wasted: 200, bound: 200, wastedShare: 200 / 1200 })
    expect(cut.split).toEqual([])
  })

  it('that no reel can take is split over reels of one batch before any others, and is named', () => {
    const reels = [aReel('a1', 600, { batch: 'A' }), aReel('b1', 700, { batch: 'B' }), aReel('a2', 450, { batch: 'A' })]
    const cut = cutOf(anInput(reels, [rings]))
    expect(onReels(cut)).toEqual([
      ['a1', '3 ring'],
      ['a2', '2 ring'],
    ])
    expect(cut.split).toEqual([{ setId: 'V1', over: 'one batch', reelIds: ['a1', 'a2'] }])
    expect(cut.totals).toMatchObject({ wasted: 50, bound: 0 })
  })

  it('that no batch can take is split over any reels', () => {
    const cut = cutOf(anInput([aReel('a1', 600, { batch: 'A' }), aReel('b1', 700, { batch: 'B' })], [rings]))
    expect(cut.split).toMatchObject([{ setId: 'V1', over: 'several batches' }])
    expect(onReels(cut)).toEqual([
      ['a1', expect.stringMatching(/[23] ring/)],
      ['b1', expect.stringMatching(/[23] ring/)],
    ])
  })

  it('that must be split comes before a whole one where more is cut so: 1000 over two reels of 600, and not 500', () => {
    const cut = cutOf(anInput([aReel('R1', 600), aReel('R2', 600)], [rings, aPiece('small', 500, 1, 'V2')]))
    expect(cut.split.map(({ setId }) => setId)).toEqual(['V1'])
    expect(cut.notCut.map(({ setId }) => setId)).toEqual(['V2'])
  })

  it('of which not all can be cut is not cut, and says how much is short; what fits beside it is cut', () => {
    const cut = cutOf(anInput([aReel('R1', 900)], [rings, aPiece('small', 100, 1, 'V2')], { sawCut: mm(1) }))
    expect(onReels(cut)).toEqual([['R1', '1 small']])
    expect(cut.notCut).toEqual([{ setId: 'V1', pieces: [{ pieceId: 'ring', setId: 'V1', length: 200, count: 5 }], short: 1005 }])
    expect(cut.totals.short).toBe(1005)
  })

  it('gives way to others where more can be cut without it: 600 + 400 before 700', () => {
    const pieces = [aPiece('p700', 700), aPiece('p600', 600), aPiece('p400', 400)]
    const cut = cutOf(anInput([aReel('R1', 1000)], pieces))
    expect(onReels(cut)).toEqual([['R1', '1 p600, 1 p400']])
    expect(cut.notCut.map(({ setId }) => setId)).toEqual(['p700'])
  })
})

describe('lengths', () => {
  it('are taken to the tenth, pieces up and reels down: 113.0973 is cut as 113.1, of 1000.09 there are 1000', () => {
    const cut = cutOf(anInput([aReel('R1', 1000.09)], [aPiece('ring', 36 * Math.PI, 5, 'V1')]))
    expect([cut.reels[0]?.pieces[0]?.length, cut.reels[0]?.used, cut.reels[0]?.end]).toEqual([113.1, 565.5, 434.5])
  })

  it('that are tenths stay so, binary dust or not', () => {
    const whole = { used: 0.3, endIs: 'none' }
    expect(cutOf(anInput([aReel('R1', 0.1 + 0.2)], [aPiece('p', 0.3)])).reels[0]).toMatchObject(whole)
    expect(cutOf(anInput([aReel('R1', 0.3)], [aPiece('p', 0.1 + 0.2)])).reels[0]).toMatchObject(whole)
  })
})

it.each([
  ['a reel of no length', { reels: [aReel('R1', 0)] }, 'number/not-positive', 'reels'],
  [
    'a reel that is NaN long',
    { reels: [{ ...aReel('R1', 1), length: Number.NaN as Millimetre }] },
    'number/not-positive',
    'reels',
  ],
  ['a day there is not', { reels: [aReel('R1', 100, { expiresOn: '2026-02-30' })] }, 'day/not-a-day', 'reels'],
  ['a reel given twice', { reels: [aReel('R1', 100), aReel('R1', 100)] }, 'cutting/twice', 'reels'],
  ['a piece given twice', { pieces: [aPiece('p', 1), aPiece('p', 1)] }, 'cutting/twice', 'pieces'],
  ['half a piece', { pieces: [aPiece('p', 100, 0.5)] }, 'number/not-a-count', 'pieces'],
  ['a piece longer than any reel is made', { pieces: [aPiece('p', 200_000)] }, 'number/out-of-range', 'pieces'],
  ['a cut below nothing', { sawCut: mm(-1) }, 'number/negative', 'sawCut'],
  ['a keep length below nothing', { keepLength: mm(-1) }, 'number/negative', 'keepLength'],
  ['more pieces than a job has', { pieces: [aPiece('a', 1, 9_999), aPiece('b', 1, 2)] }, 'cutting/too-many', 'pieces'],
  [
    'more reels than a job has',
    { reels: Array.from({ length: 1_001 }, (_, at) => aReel(`R${at}`, 1)) },
    'cutting/too-many',
    'reels',
  ],
])('%s is refused', (_, more, code, field) => {
  expect(cutFromReels(anInput([], [], more))).toMatchObject({ ok: false, problem: { code, field } })
})

it('no pieces ask for nothing, and no reels leave all uncut', () => {
  expect(cutOf(anInput([aReel('R1', 100)], []))).toMatchObject({ reels: [], notCut: [], totals: { wastedShare: 0, bound: 0 } })
  expect(cutOf(anInput([], [aPiece('p', 100)]))).toMatchObject({ reels: [], notCut: [{ setId: 'p', short: 100 }] })
})
