import type { ReviewedRepack } from '@glandkeeper/contract/outages'
import { describe, expect, it } from 'vitest'
import { barOf, followUpsOf, piecesInWords, reviewInWords, worstFirst } from './review-words.ts'

const valve = (tag: string, about: Partial<ReviewedRepack> = {}) =>
  ({ tag, repackedOn: '2027-06-10', leakedAfterDays: null, followUp: 'made', ...about }) as ReviewedRepack

describe('an outage looked back on', () => {
  const review = (planned: number, done: number, extra: number, leaked: number, isComplete = true) =>
    reviewInWords({ planned, done, notDone: planned - done, extra, leaked, isComplete })

  it.each([
    [
      34,
      31,
      2,
      3,
      'Of 34 repacks planned, 31 were made, 3 were not. 2 more were made without a plan. 3 of 33 leaked within 30 days.',
    ],
    [5, 5, 0, 0, 'Of 5 repacks planned, all were made. None of 5 leaked within 30 days.'],
    [2, 1, 1, 0, 'Of 2 repacks planned, 1 was made, 1 was not. 1 more was made without a plan. None of 2 leaked within 30 days.'],
    [3, 0, 0, 0, 'Of 3 repacks planned, none were made, 3 were not.'],
    [0, 0, 0, 0, 'No repack was planned for it.'],
    [0, 0, 2, 0, 'No repack was planned for it. 2 were made without a plan. None of 2 leaked within 30 days.'],
  ])('%d planned, %d made, %d without a plan, %d leaked', (planned, done, extra, leaked, says) => {
    expect(review(planned, done, extra, leaked)).toBe(says)
  })

  it('says that more may come while the 30 days last', () => {
    expect(review(5, 5, 0, 0, false)).toMatch(/are not over: more may leak yet\.$/)
    expect(review(5, 0, 0, 0, false)).not.toMatch(/more may leak/)
  })

  it('counts follow-ups by what became of them', () => {
    const valves = [valve('A'), valve('B', { followUp: 'lost' }), valve('C', { followUp: 'due' }), valve('D', { followUp: null })]
    expect(followUpsOf(valves)).toEqual({ made: 1, due: 1, lost: 1 })
  })

  it('has on top what leaked, then what was not followed up, then what was not done', () => {
    const valves = [
      valve('A'),
      valve('E', { leakedAfterDays: 0 as never }),
      valve('C', { repackedOn: null, followUp: null }),
      valve('D', { followUp: 'lost' }),
      valve('B', { leakedAfterDays: 12 as never }),
    ]
    expect(worstFirst(valves).map(({ tag }) => tag)).toEqual(['B', 'E', 'D', 'C', 'A'])
  })
})

describe('a bar', () => {
  it('has its pieces one behind the other, to scale, without those of nothing', () => {
    const pieces = barOf(
      [
        ['done', 3],
        ['not done', 0],
        ['extra', 2],
      ],
      10,
    )
    expect(pieces).toEqual([
      { kind: 'done', count: 3, x: 0, width: 30 },
      { kind: 'extra', count: 2, x: 30, width: 20 },
    ])
  })

  it('is said without what there is none of', () => {
    expect(
      piecesInWords([
        ['made', 3],
        ['still due', 0],
        ['lost', 1200],
      ]),
    ).toBe('3 made, 1,200 lost')
    expect(piecesInWords([['made', 0]])).toBe('none')
  })
})
