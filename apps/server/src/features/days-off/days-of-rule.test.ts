import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { daysAfter } from '../../platform/local-time.ts'
import { Refusal } from '../../platform/problem.ts'
import { daysOfRule } from './days-of-rule.ts'

const year = { from: '2026-01-01', to: '2026-12-31' }
const oneDay = (startsOn: string, repeats: string | null) => ({ startsOn, endsOn: startsOn, repeats })

function refusalOf(row: Parameters<typeof daysOfRule>[0], span = year): string {
  try {
    return daysOfRule(row, span).join(' ')
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    expect(error.code).toBe('daysoff/rule')
    return error.detail ?? ''
  }
}

describe('days off that do not come back', () => {
  it('are their days, cut at the ends of the span', () => {
    const row = { startsOn: '2025-12-24', endsOn: '2026-01-02', repeats: null }
    expect(daysOfRule(row, year)).toEqual(['2026-01-01', '2026-01-02'])
    expect(daysOfRule(row, { from: '2025-12-01', to: '2025-12-25' })).toEqual(['2025-12-24', '2025-12-25'])
    expect(daysOfRule(row, { from: '2026-02-01', to: '2026-02-28' })).toEqual([])
  })
})

describe('days off that come back', () => {
  it('come back as many as they were, over the turn of a year too', () => {
    const row = { startsOn: '2024-12-30', endsOn: '2025-01-02', repeats: 'FREQ=YEARLY' }
    expect(daysOfRule(row, year)).toEqual(['2026-01-01', '2026-01-02', '2026-12-30', '2026-12-31'])
  })

  it('count once where they meet', () => {
    const row = { startsOn: '2026-05-04', endsOn: '2026-05-06', repeats: 'FREQ=DAILY;COUNT=3' }
    expect(daysOfRule(row, year)).toEqual(['2026-05-04', '2026-05-05', '2026-05-06', '2026-05-07', '2026-05-08'])
  })

  it('have their first days even where the rule would not give them, and COUNT counts those', () => {
    expect(daysOfRule(oneDay('2026-05-06', 'FREQ=WEEKLY;BYDAY=FR;COUNT=3'), year)).toEqual([
      '2026-05-06',
      '2026-05-08',
      '2026-05-15',
    ])
  })

  it('end with UNTIL, the last day with it', () => {
    for (const until of ['20260518', '20260518T000000Z', '20260518T235959'])
      expect(daysOfRule(oneDay('2026-05-04', `RRULE:FREQ=WEEKLY;UNTIL=${until}`), year)).toEqual([
        '2026-05-04',
        '2026-05-11',
        '2026-05-18',
      ])
  })

  it('stand on the same weekday on both sides of a clock change, whatever the span', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 600 }), fc.integer({ min: 0, max: 60 }), (start, length) => {
        const from = daysAfter('2026-01-01', start)
        const days = daysOfRule(oneDay('2026-01-05', 'FREQ=WEEKLY'), { from, to: daysAfter(from, length) })
        expect(days.every((day) => new Date(`${day}T00:00:00Z`).getUTCDay() === 1)).toBe(true)
        expect(days.length >= Math.floor((length + 1) / 7) || from < '2026-01-05').toBe(true)
      }),
    )
  })
})

describe('a rule is refused by name', () => {
  it.each([
    ['', 'nothing is not read in '],
    ['every Friday', 'EVERY FRIDAY is not read in every Friday'],
    ['INTERVAL=2', 'FREQ is missing in INTERVAL=2'],
    ['FREQ=HOURLY', 'FREQ=HOURLY is not read in FREQ=HOURLY'],
    ['FREQ=DAILY;INTERVAL=0', 'INTERVAL=0 is not read in FREQ=DAILY;INTERVAL=0'],
    ['FREQ=DAILY;COUNT=many', 'COUNT=MANY is not read in FREQ=DAILY;COUNT=many'],
    ['FREQ=DAILY;COUNT=2;COUNT=3', 'COUNT stands twice in FREQ=DAILY;COUNT=2;COUNT=3'],
    ['FREQ=DAILY;COUNT=2;UNTIL=20260601', 'COUNT and UNTIL say two ends in FREQ=DAILY;COUNT=2;UNTIL=20260601'],
    ['FREQ=DAILY;UNTIL=20261301', 'UNTIL=20261301 is not read in FREQ=DAILY;UNTIL=20261301'],
    ['FREQ=WEEKLY;BYDAY=1MO', 'a week has each day once in FREQ=WEEKLY;BYDAY=1MO'],
    ['FREQ=WEEKLY;BYHOUR=7', 'BYHOUR=7 is not read in FREQ=WEEKLY;BYHOUR=7'],
    ['FREQ=WEEKLY\nDTSTART:20200101', 'FREQ=WEEKLY\nDTSTART:20200101 is not read in FREQ=WEEKLY\nDTSTART:20200101'],
  ])('that cannot be read: %s', (rule, why) => {
    expect(refusalOf(oneDay('2026-05-04', rule))).toBe(why)
  })

  it.each([
    ['FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30', 'BYMONTH is not read beside DAILY in FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30'],
    ['FREQ=MONTHLY;BYMONTH=2;BYMONTHDAY=30', 'FREQ=MONTHLY;BYMONTH=2;BYMONTHDAY=30: the day never comes'],
    ['FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30', 'FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30: the day never comes'],
    ['FREQ=WEEKLY;UNTIL=20200101', 'FREQ=WEEKLY;UNTIL=20200101: the day never comes'],
  ])('whose day never comes, and soon: %s', (rule, why) => {
    const began = performance.now()
    expect(refusalOf(oneDay('2026-05-04', rule))).toBe(why)
    expect(performance.now() - began).toBeLessThan(5000)
  })

  it('that comes too often in a span, began too long ago, or is of a year and more', () => {
    expect(refusalOf(oneDay('2026-05-04', 'FREQ=DAILY'), { from: '2026-01-01', to: '2030-01-01' })).toBe(
      'FREQ=DAILY: comes more than 1000 times from 2026-01-01 to 2030-01-01',
    )
    expect(refusalOf(oneDay('0001-01-01', 'FREQ=DAILY'))).toBe('FREQ=DAILY: begins more than 100 years before')
    expect(refusalOf({ startsOn: '2026-01-01', endsOn: '9999-12-31', repeats: 'FREQ=YEARLY' })).toBe(
      'FREQ=YEARLY: more than 366 days on end do not come back',
    )
  })
})

it('a rule without an end is followed within the span only, and soon', () => {
  const began = performance.now()
  expect(daysOfRule(oneDay('1950-01-01', 'FREQ=DAILY'), year)).toHaveLength(365)
  expect(daysOfRule(oneDay('1950-01-01', 'FREQ=MONTHLY;BYDAY=-1FR'), year)).toHaveLength(12)
  expect(performance.now() - began).toBeLessThan(5000)
})

it('any text as a rule gives days in order or a refusal, never anything else', () => {
  const part = fc.constantFrom(
    'FREQ=WEEKLY',
    'FREQ=MONTHLY',
    'INTERVAL=3',
    'COUNT=4',
    'BYDAY=-1FR',
    'BYSETPOS=9',
    'WKST=SU',
    'UNTIL=20260701',
  )
  const rule = fc.oneof(
    fc.string(),
    fc.array(part, { minLength: 1, maxLength: 5 }).map((parts) => parts.join(';')),
  )
  fc.assert(
    fc.property(rule, (repeats) => {
      try {
        const days = daysOfRule(oneDay('2026-02-02', repeats), year)
        expect(days).toEqual([...new Set(days)].toSorted())
        expect(days[0]).toBe('2026-02-02')
      } catch (error) {
        expect(error).toMatchObject({ code: 'daysoff/rule' })
      }
    }),
    { numRuns: 60 },
  )
})

it('the example of the docstring holds', () => {
  const row = { startsOn: '2026-05-02', endsOn: '2026-05-03', repeats: 'FREQ=WEEKLY' }
  expect(daysOfRule(row, { from: '2026-05-09', to: '2026-05-16' })).toEqual(['2026-05-09', '2026-05-10', '2026-05-16'])
})
