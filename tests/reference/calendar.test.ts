import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { calendarOf } from '../../apps/server/src/features/calendars/feed.ts'
import { daysOfRule } from '../../apps/server/src/features/days-off/index.ts'
import { daysAfter, isoWeekOf, momentAt, mondayOf } from '../../apps/server/src/platform/local-time.ts'

interface Group<Case> {
  readonly source: string
  readonly mark: string
  readonly cases: readonly Case[]
}
interface RuleCase {
  readonly rule: string
  readonly start: string
  /** What EXDATE takes out. */
  readonly without?: readonly string[]
  readonly dates: readonly string[]
  /** Whether these are all there are, or the first of many. */
  readonly ends: boolean
}

/** RFC 5545 and ISO 8601; each group stands beside its source and mark. */
const values = JSON.parse(readFileSync(path.join(import.meta.dirname, 'values/calendar.json'), 'utf8')) as {
  readonly rules: Group<RuleCase>
  readonly shortMonths: Group<RuleCase>
  readonly moments: Group<{ place: string; day: string; time: string; moment: string }>
  readonly dayLengths: Group<{ place: string; day: string; hours: number }>
  readonly weeks: Group<{ day: string; week: string }>
}

function datesOf({ rule, start, without = [], dates, ends }: RuleCase): string[] {
  const row = { startsOn: start, endsOn: start, repeats: rule }
  // One that ends has nothing more in the years after; one that does not is compared as far as it is printed.
  const to = ends ? daysAfter(dates.at(-1)!, 900) : dates.at(-1)!
  return daysOfRule(row, { from: start, to }).filter((day) => !without.includes(day))
}

describe('recurrence rules of RFC 5545, 3.8.5.3', () => {
  it.each(values.rules.cases)('$rule from $start', (published) => {
    expect(datesOf(published)).toEqual(published.dates)
  })
})

describe('RFC 5545, 3.3.10: days that a month or year does not have are skipped', () => {
  it.each(values.shortMonths.cases)('$rule from $start', (published) => {
    expect(datesOf(published)).toEqual(published.dates)
  })
})

describe('RFC 5545, 3.3.5: hours that come twice or not at all (from memory)', () => {
  it.each(values.moments.cases)('$place, $day $time is $moment', ({ place, day, time, moment }) => {
    expect(momentAt(day, time, place).toISOString()).toBe(moment)
  })
})

describe('days on which clocks change (from memory)', () => {
  it.each(values.dayLengths.cases)('$place, $day has $hours hours', ({ place, day, hours }) => {
    const midnight = (isoDay: string) => momentAt(isoDay, '00:00', place).getTime()
    expect((midnight(daysAfter(day, 1)) - midnight(day)) / 3_600_000).toBe(hours)
  })
})

describe('weeks of ISO 8601 (worked out)', () => {
  it.each(values.weeks.cases)('$day is $week', ({ day, week }) => {
    const { year, week: number } = isoWeekOf(day)
    const weekday = [1, 2, 3, 4, 5, 6, 7].find((nth) => daysAfter(mondayOf(day), nth - 1) === day)
    expect(`${year}-W${String(number).padStart(2, '0')}-${weekday}`).toBe(week)
  })
})

describe('lines of a calendar, RFC 5545, 3.1 and 3.3.11 (from memory)', () => {
  const withName = (name: string) =>
    calendarOf({
      name,
      timeZone: 'Europe/London',
      setOutAt: '07:00',
      rounds: [
        {
          id: '019a0000-0000-7000-8000-000000000000',
          name,
          walkOn: '2026-05-04',
          stopCount: 12,
          areaNames: [name],
          fitterName: name,
          minutes: 90,
          changedAt: new Date('2026-05-01T09:00:00Z'),
        },
      ],
    })
  /** Letters of one, two, three and four octets. */
  const letters = ['a', 'ü', '弁', '🝆']

  it.each(letters)('are folded at 75 octets and not within a letter: %s', (letter) => {
    // Every shift of the letters against the fold.
    for (let shift = 0; shift < 8; shift += 1) {
      const name = `${'x'.repeat(shift)}${letter.repeat(120)}`
      const folded = withName(name)
      const octets = folded.split('\r\n').map((line) => Buffer.byteLength(line))
      expect(Math.max(...octets)).toBeLessThanOrEqual(75)
      // Filled as far as a letter of four octets allows, so that it is folding and not chopping.
      expect(octets.filter((count) => count > 70).length).toBeGreaterThan(3)
      // Half a letter does not survive this.
      expect(Buffer.from(folded).toString('utf8')).toBe(folded)
      expect(folded.replaceAll('\r\n ', '')).toContain(`SUMMARY:${name}\\, 12 stops\r\n`)
    }
  })

  it('have backslash, semicolon, comma and line break escaped, in names of calendars too', () => {
    const escaped = String.raw`a\\b\;c\,d\ne`
    const lines = withName('a\\b;c,d\ne').replaceAll('\r\n ', '').split('\r\n')
    expect(lines).toContain(`NAME:${escaped}`)
    expect(lines).toContain(`SUMMARY:${escaped}\\, 12 stops`)
    expect(lines).toContain(String.raw`DESCRIPTION:Area: ${escaped}\nExpected: 90 min\nFitter: ${escaped}`)
  })

  it('end with a line break, the last one too, and no other line break stands in them', () => {
    const text = withName('a\rb\nc\r\nd')
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true)
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
  })
})
