import { aValveCard } from '@glandkeeper/fixtures/a-card'
import { expect, test } from 'vitest'
import { cautionFor } from './caution.ts'
import { type Draft, emptyDraft } from './draft.ts'
import { questionsBefore, savedInWords } from './draft-words.ts'
import { isSpent, leavesAfter, leavesInWords, offersHalfTurn } from './leaves.ts'

const history = (
  state: Readonly<Record<string, unknown>> = {},
  gland: Readonly<Record<string, unknown>> = {},
  expects: { reserve: number; deviation: number } | null = null,
) => aValveCard({ state, gland, expects })
const unread = { gapLeft: null, gapRight: null }
const half = { left: 0.5, right: 0.5 }

test('half a turn of an M12 nut leaves 0.875 mm less', () => {
  expect(leavesAfter(history(), half)?.reserve).toBeCloseTo(3.6 - 0.875, 9)
  expect(leavesInWords(history(), half, unread)).toBe('leaves 2.7\u00a0mm')
  expect(savedInWords(emptyDraft, history())).toBe('half a turn, 0.875\u00a0mm less')
})

test('of uneven turns the side with the least gap counts', () => {
  expect(leavesAfter(history(), { left: 0, right: 0.5 })?.reserve).toBeCloseTo(6.6 - 0.875 - 3, 9)
  expect(leavesAfter(history(), { left: 0.5, right: 0 })?.reserve).toBeCloseTo(7.4 - 0.875 - 3, 9)
})

test('where the stud thread ends first the thread counts', () => {
  const atThread = history({ reserve: 1, reserveLimitedBy: 'thread' })
  expect(leavesAfter(atThread, half)?.reserve).toBeCloseTo(1 - 0.875, 9)
})

test('an unknown pitch, thread or gap is said instead of a figure', () => {
  expect(leavesInWords(history({}, { studThread: 'M12x1.1' }), half, unread)).toContain('pitch of M12x1.1 not known')
  expect(leavesInWords(history({}, { studThread: null }), half, unread)).toContain('stud thread not recorded')
  expect(leavesInWords(history({ gapLeft: null, gapRight: null, reserve: null }), half, unread)).toContain('gap not measured')
})

test('a gap that was read says what is left, whatever the turns say and even without a pitch', () => {
  expect(leavesInWords(history(), half, { gapLeft: 6, gapRight: 5 })).toBe('leaves 2.0\u00a0mm')
  expect(leavesInWords(history({}, { studThread: null }), half, { gapLeft: 6, gapRight: 5 })).toBe('leaves 2.0\u00a0mm')
})

test('a gland is spent by its standing or by its reserve', () => {
  expect([
    isSpent(history().state),
    isSpent(history({ standing: 'spent' }).state),
    isSpent(history({ reserve: 0 }).state),
  ]).toEqual([false, true, true])
})

test('half a turn is the one tap only where there is travel for it, or nobody can say', () => {
  expect(offersHalfTurn(history())).toBe(true)
  expect(offersHalfTurn(history({ gapLeft: 3.8, gapRight: 3.8, reserve: 0.8 }))).toBe(false)
  expect(offersHalfTurn(history({ gapLeft: 3.875, gapRight: 4, reserve: 0.875 }))).toBe(true)
  expect(offersHalfTurn(history({ standing: 'spent', reserve: -1 }))).toBe(false)
  expect(offersHalfTurn(history({}, { studThread: null }))).toBe(true)
})

test('turns the record has no travel for are asked about', () => {
  expect(questionsBefore(emptyDraft, [], history())).toEqual([])
  expect(questionsBefore(emptyDraft, [], history({ gapLeft: 3.5, gapRight: 3.5, reserve: 0.5 }))).toEqual([
    'By the record this is 0.4\u00a0mm more than is left.',
  ])
  expect(questionsBefore(emptyDraft, [], history({ standing: 'spent', reserve: -1 }))).toEqual([
    'By the record no travel is left.',
  ])
})

const expected = { reserve: 3.4, deviation: 0.5 }
const read: Draft = { ...emptyDraft, turns: 'none', gapLeft: 7.4, gapRight: 6.6 }
const asked = (change: Partial<Draft>, known = history({ lastSeenAt: '2026-05-01T09:00:00Z' }, {}, expected)) =>
  questionsBefore({ ...read, ...change }, [], known).map((question) => question.replaceAll('\u00a0', ' '))

test('a reading more than 3 deviations off is asked for again: 5.0 mm where 3.4 ± 1.5 mm was to be expected', () => {
  expect(asked({ gapLeft: 8, gapRight: 8 })).toEqual([
    'Read: 5.0 mm left. Expected: about 3.4 mm, hardly ever outside 1.9 to 4.9 mm.',
    'Read both gaps again. Saved all the same, the reading is kept and marked.',
  ])
  expect(asked({ gapLeft: 4.8, gapRight: 8 })).toHaveLength(2)
})

test('a reading within 3 deviations is not asked about, nor is one side that agrees with the record', () => {
  expect(asked({})).toEqual([])
  expect(asked({ gapLeft: 7.8, gapRight: 7.8 })).toEqual([])
  expect(asked({ gapLeft: 9, gapRight: null })).toEqual([])
})

test('after half a turn the gap is expected half a turn lower: 3.6 - 0.875 = 2.7 mm', () => {
  const forecast = {
    countedFrom: '2026-05-01T09:00:00Z',
    level: 3.6,
    levelDeviation: 0.2,
    earliest: null,
    early: null,
    middle: null,
    late: null,
    latest: null,
    chanceBeforeStop: 0,
    stopOn: '2026-06-09',
    readingsUsed: 3,
    earlierLivesUsed: 0,
    leftOut: [],
    group: 'steam · graphite braid',
    origin: 'set by us',
    says: [],
  }
  const known = history({ forecast }, {}, { reserve: 3.4, deviation: 0.2 })
  const turned = { turns: 'half', gapLeft: 9 } as const
  expect(asked({ ...turned, gapRight: 5.7 }, known)).toEqual([])
  expect(asked({ ...turned, gapRight: 7.3 }, known)[0]).toBe(
    'Read: 4.3 mm left. Expected: about 2.7 mm, hardly ever outside 1.4 to 4.0 mm.',
  )
  expect(
    asked({ ...turned, gapRight: 7.3 }, history({ forecast }, { studThread: null }, { reserve: 3.4, deviation: 0.2 })),
  ).toEqual([])
})

test('where nothing is expected, or what is expected does not hold, no reading is asked for again', () => {
  const far = { gapLeft: 12, gapRight: 12 }
  expect(asked(far, history({}, {}, null))).toEqual([])
  expect(asked({ ...far, kind: 'repacked' })).toEqual([])
  expect(asked({ ...far, kind: 'ring added' })).toEqual([])
  expect(asked({ ...far, takenAt: '2026-04-02T09:00' })).toEqual([])
  expect(asked({ ...far, takenAt: '2026-05-02T09:00' })).toHaveLength(2)
  expect(asked({ gapLeft: null, gapRight: null })).toEqual([])
})

test('an unknown service is taken for a dangerous one', () => {
  expect(cautionFor({ temperature: null, pressure: null, phase: 'liquid' })).toContain('take it for hot and under pressure')
  expect(cautionFor(history().valve)).toBe(
    'Hot, 160\u00a0°C. Under pressure, 5\u00a0bar of steam. Stay out of the stem line; never loosen under pressure. Site procedure and permit decide.',
  )
})
