import { RegulatedLeak } from '@glandkeeper/contract/leak-rules'
import type { z } from 'zod'
import { expect, test } from 'vitest'
import { attemptClock, fromToday, nextDeadline, repairClock, standingInWords, standingLeaks } from './clock-words.ts'

const TODAY = '2026-05-20'

/** Seen on the first, tried in time, to be mended in a fortnight. */
function aLeak(change: Partial<z.input<typeof RegulatedLeak>> = {}): RegulatedLeak {
  return RegulatedLeak.parse({
    leakId: '01890000-0000-7000-8000-000000000001',
    tag: 'BM-1',
    description: '',
    areaCode: 'BM',
    detectedOn: '2026-05-10',
    worst: 'weep',
    worstScreening: 12_000,
    firstAttemptOn: '2026-05-12',
    firstAttemptBy: '2026-05-15',
    attempt: 'made',
    repairedOn: null,
    repairBy: '2026-05-25',
    repair: 'due',
    daysLeft: 5,
    deferral: null,
    ...change,
  })
}
const plain = (text: string) => text.replaceAll('\u00a0', ' ')
const untried = { firstAttemptOn: null, attempt: 'due' } as const
const putOff = (until: string | null) => ({ reason: 'needs a shutdown', approvedBy: 'P. Lindqvist', until })

test('the first attempt: made, late, due and over, each with its word and days', () => {
  const said = (change: Parameters<typeof aLeak>[0]) => {
    const { shape, word, says } = attemptClock(aLeak(change), TODAY)
    return [shape, word, plain(says)]
  }
  expect(said({})).toEqual(['met', 'made', '12 May 2026'])
  expect(said({ firstAttemptOn: '2026-05-18', attempt: 'made late' })).toEqual([
    'met late',
    'made late',
    '18 May 2026, 3 days late',
  ])
  expect(said({ ...untried, firstAttemptBy: '2026-05-21' })).toEqual(['due', 'due', 'by 21 May 2026, in 1 day'])
  expect(said({ ...untried, attempt: 'overdue' })).toEqual(['overdue', 'overdue', 'by 15 May 2026, over by 5 days'])
})

test('the repair: seen gone, due, over, put off with and without a day', () => {
  const said = (change: Parameters<typeof aLeak>[0]) => {
    const { shape, word, says } = repairClock(aLeak(change), TODAY)
    return [shape, word, plain(says)]
  }
  expect(said({})).toEqual(['due', 'due', 'by 25 May 2026, in 5 days'])
  expect(said({ repairBy: '2026-05-19', repair: 'overdue' })).toEqual(['overdue', 'overdue', 'by 19 May 2026, over by 1 day'])
  expect(said({ repair: 'put off', deferral: putOff('2026-06-01') })).toEqual([
    'put off',
    'put off',
    'until 1 Jun 2026, in 12 days',
  ])
  expect(said({ repair: 'put off', deferral: putOff(null) })).toEqual(['put off', 'put off', 'no day set'])
  expect(said({ repair: 'put off, past its day', deferral: putOff('2026-05-19') })[2]).toBe('until 19 May 2026, over by 1 day')
  expect(said({ repair: 'verified', repairedOn: '2026-05-20' })).toEqual(['met', 'seen gone', '20 May 2026'])
  expect(said({ repair: 'verified late', repairedOn: '2026-05-28' })[2]).toBe('28 May 2026, 3 days late')
})

test('a repair that was put off is late past the day it was put off to', () => {
  const leak = aLeak({ repair: 'verified late', repairedOn: '2026-06-05', deferral: putOff('2026-06-01') })
  expect(repairClock(leak, TODAY).says).toBe('5 Jun 2026, 4 days late')
})

test('the last day is still in time', () => {
  expect(fromToday(TODAY, TODAY)).toBe('today')
  expect(fromToday('2026-05-19', TODAY)).toBe('over by 1\u00a0day')
})

test('what is due first is on top: an attempt before its repair, and what has no day is last', () => {
  const leaks = [
    aLeak({ tag: 'no day', repair: 'put off', deferral: putOff(null) }),
    aLeak({ tag: 'repair', repairBy: '2026-05-24' }),
    aLeak({ tag: 'put off', repair: 'put off', deferral: putOff('2026-06-01') }),
    aLeak({ tag: 'gone', repair: 'verified', repairedOn: '2026-05-19' }),
    aLeak({ tag: 'attempt', ...untried, firstAttemptBy: '2026-05-21', repairBy: '2026-06-03' }),
    aLeak({ tag: 'over', repairBy: '2026-05-18', repair: 'overdue' }),
  ]
  expect(standingLeaks(leaks).map(({ tag }) => tag)).toEqual(['over', 'attempt', 'repair', 'put off', 'no day'])
  expect(nextDeadline(aLeak({ repair: 'verified', repairedOn: '2026-05-19' }))).toBeNull()
  expect(standingInWords(leaks, TODAY)).toBe('5 leaks not seen gone: 1 past its day, 2 put off.')
  expect(standingInWords([], TODAY)).toBe('No leak under this rule waits for anything.')
})

test('put off, the first attempt stays due', () => {
  expect(nextDeadline(aLeak({ ...untried, repair: 'put off', deferral: putOff('2026-06-01') }))).toBe('2026-05-15')
})
