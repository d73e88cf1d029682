import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { calendarDay, writtenDay } from '../../stores/calendar-day.ts'
import { repairClock, type RepairClockInput } from './clocks.ts'

const rule = { firstAttemptDays: 5, repairDays: 15 }
const open: RepairClockInput = {
  detectedOn: '2026-03-10',
  firstAttemptOn: null,
  repairedOn: null,
  deferred: null,
  today: '2026-03-10',
  rule,
}

function clock(change: Partial<RepairClockInput>) {
  const found = repairClock({ ...open, ...change })
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}
const problemOf = (change: Partial<RepairClockInput>) => {
  const found = repairClock({ ...open, ...change })
  return found.ok ? null : [found.problem.code, found.problem.field]
}

describe('the clocks of a leak', () => {
  it('found on 10 March: first attempt by the 15th, repair by the 25th, 15 days left', () => {
    expect(clock({})).toMatchObject({
      firstAttemptBy: '2026-03-15',
      repairBy: '2026-03-25',
      attempt: 'due',
      repair: 'due',
      daysLeft: 15,
    })
  })

  it.each([
    ['2026-03-15', 'due', 'due', 10],
    ['2026-03-16', 'overdue', 'due', 9],
    ['2026-03-25', 'overdue', 'due', 0],
    ['2026-03-26', 'overdue', 'overdue', -1],
  ])('untouched on %s: attempt %s, repair %s, %i days left', (today, attempt, repair, daysLeft) => {
    expect(clock({ today })).toMatchObject({ attempt, repair, daysLeft })
  })

  it.each([
    ['2026-03-10', 'made'],
    ['2026-03-15', 'made'],
    ['2026-03-16', 'made late'],
  ])('an attempt on %s is %s', (firstAttemptOn, attempt) => {
    expect(clock({ firstAttemptOn, today: '2026-03-20' })).toMatchObject({ attempt, repair: 'due', daysLeft: 5 })
  })

  it.each([
    ['2026-03-25', 'verified', 0],
    ['2026-03-27', 'verified late', -2],
  ])('repaired on %s is %s, however long ago', (repairedOn, repair, daysLeft) => {
    expect(clock({ firstAttemptOn: '2026-03-11', repairedOn, today: '2026-09-01' })).toMatchObject({ repair, daysLeft })
  })

  it('a repair is an attempt too, where none was entered or a later one', () => {
    expect(clock({ repairedOn: '2026-03-12', today: '2026-03-20' }).attempt).toBe('made')
    expect(clock({ repairedOn: '2026-03-12', firstAttemptOn: '2026-03-18', today: '2026-03-20' }).attempt).toBe('made')
    expect(clock({ repairedOn: '2026-03-20', today: '2026-03-20' }).attempt).toBe('made late')
  })
})

describe('a leak that is put off', () => {
  const deferred = { until: '2026-06-01' }

  it('is put off to its day, past it from the next', () => {
    expect(clock({ deferred, today: '2026-06-01' })).toMatchObject({ repair: 'put off', daysLeft: 0 })
    expect(clock({ deferred, today: '2026-06-02' })).toMatchObject({ repair: 'put off, past its day', daysLeft: -1 })
  })

  it('keeps the day of its first attempt', () => {
    expect(clock({ deferred, today: '2026-03-16' })).toMatchObject({ attempt: 'overdue', repair: 'put off' })
  })

  it('without a day has no days left to count, and is not late', () => {
    const undated = { until: null }
    expect(clock({ deferred: undated, today: '2027-01-01' })).toMatchObject({ repair: 'put off', daysLeft: null })
    expect(clock({ deferred: undated, repairedOn: '2026-12-01', today: '2027-01-01' }).repair).toBe('verified')
  })

  it('and repaired by its day is verified in time, after it late', () => {
    expect(clock({ deferred, repairedOn: '2026-06-01', today: '2026-07-01' }).repair).toBe('verified')
    expect(clock({ deferred, repairedOn: '2026-06-02', today: '2026-07-01' }).repair).toBe('verified late')
  })

  it('to a day before the rule asks for has the days of the rule', () => {
    expect(clock({ deferred: { until: '2026-03-12' }, today: '2026-03-20' })).toMatchObject({ repair: 'put off', daysLeft: 5 })
  })
})

describe('refused with its field', () => {
  it.each<[string, Partial<RepairClockInput>, [string, string]]>([
    ['a 30th of February', { detectedOn: '2026-02-30' }, ['clock/not-a-day', 'detectedOn']],
    ['a word for today', { today: 'today' }, ['clock/not-a-day', 'today']],
    ['a day of twelve months too many', { deferred: { until: '2026-13-01' } }, ['clock/not-a-day', 'until']],
    ['a leak found tomorrow', { detectedOn: '2026-03-11' }, ['clock/after-today', 'detectedOn']],
    ['a repair of tomorrow', { repairedOn: '2026-03-11' }, ['clock/after-today', 'repairedOn']],
    ['an attempt before the leak was found', { firstAttemptOn: '2026-03-09' }, ['clock/before-it-was-found', 'firstAttemptOn']],
    [
      'a rule that repairs before it tries',
      { rule: { firstAttemptDays: 5, repairDays: 4 } },
      ['rule/repair-before-attempt', 'repairDays'],
    ],
  ])('%s', (_, change, problem) => expect(problemOf(change)).toEqual(problem))
})

it('the day by which is the day found and as many days, in any month of any year', () => {
  fc.assert(
    fc.property(fc.integer({ min: -20_000, max: 60_000 }), fc.nat(400), (day, more) => {
      const detectedOn = writtenDay(calendarDay(day))
      const { repairBy } = clock({ detectedOn, today: detectedOn, rule: { firstAttemptDays: 0, repairDays: more } })
      expect(repairBy).toBe(new Date((day + more) * 86_400_000).toISOString().slice(0, 10))
    }),
  )
})
