import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dueVisits, type DueVisitsInput } from './due-visits.ts'

const usual: DueVisitsInput = {
  nextLook: 3,
  every: 8,
  isFollowUp: false,
  wasMissed: false,
  weeks: 20,
  firstFreeWeek: 0,
  windowShare: 0.25,
  catchUpWeeks: 2,
}
const windows = (input: Partial<DueVisitsInput>) => {
  const found = dueVisits({ ...usual, ...input })
  return found.ok ? found.visits.map(({ earliest, due, latest }) => [earliest, due, latest]) : found.problem.field
}

describe('visits of a valve over a plan', () => {
  it.each([
    [
      'a routine look with a quarter of its time to either side',
      {},
      [
        [1, 3, 5],
        [9, 11, 13],
        [17, 19, 21],
      ],
    ],
    [
      'a follow-up in its week alone, routine after it',
      { isFollowUp: true, weeks: 12 },
      [
        [3, 3, 3],
        [9, 11, 13],
      ],
    ],
    [
      'an overdue look caught up with, and followed from now on',
      { nextLook: -9, weeks: 10 },
      [
        [0, -9, 1],
        [6, 8, 10],
      ],
    ],
    ['a missed one caught up with from the first free week', { wasMissed: true, firstFreeWeek: 1, weeks: 9 }, [[1, 3, 2]]],
    ['a window that ends in frozen weeks caught up with after them', { firstFreeWeek: 6, weeks: 9 }, [[6, 3, 7]]],
    ['a window cut where weeks are frozen', { firstFreeWeek: 4, weeks: 9 }, [[4, 3, 5]]],
    [
      'weekly looks without a window, so that none meets the next',
      { every: 1, weeks: 6 },
      [
        [3, 3, 3],
        [4, 4, 4],
        [5, 5, 5],
      ],
    ],
    ['nothing where the next look lies beyond', { nextLook: 40 }, []],
    ['no width where the site wants none', { windowShare: 0, weeks: 9 }, [[3, 3, 3]]],
  ] as const)('%s', (_, input, expected) => expect(windows(input)).toEqual(expected))

  it.each([
    [{ every: 0 }, 'every'],
    [{ every: NaN }, 'every'],
    [{ nextLook: 0.5 }, 'nextLook'],
    [{ windowShare: 0.6 }, 'windowShare'],
    [{ windowShare: NaN }, 'windowShare'],
  ])('refuses %o', (input, field) => expect(windows(input)).toBe(field))

  it('has windows in order that hold a week and do not meet', () => {
    const input = fc.record({
      nextLook: fc.integer({ min: -60, max: 60 }),
      every: fc.integer({ min: 1, max: 60 }),
      isFollowUp: fc.boolean(),
      wasMissed: fc.boolean(),
      firstFreeWeek: fc.constant(0),
      windowShare: fc.double({ min: 0, max: 0.5, noNaN: true }),
      catchUpWeeks: fc.constant(1),
    })
    fc.assert(
      fc.property(input, (some) => {
        const found = dueVisits({ ...usual, ...some, weeks: 52 })
        if (!found.ok) throw new Error(found.problem.detail)
        for (const [index, { earliest, latest }] of found.visits.entries()) {
          expect(earliest).toBeLessThanOrEqual(latest)
          const after = found.visits[index + 1]
          if (after && !some.wasMissed) expect(after.earliest).toBeGreaterThan(latest)
        }
      }),
    )
  })
})
