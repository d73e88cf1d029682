import { describe, expect, it } from 'vitest'
import { byArea } from './by-area.ts'
import { type Percent, percentFrame } from './percent-geometry.ts'
import { courseSays, excludedSays, limitsSay, percentSays } from './percent-words.ts'

const percent = {
  numerator: 3,
  denominator: 120,
  percent: 2.5,
  lower: 0.52,
  upper: 7.13,
  allowed: 2,
  isAbove: true,
  excluded: [
    { why: 'unsafe to monitor', valves: 3 },
    { why: 'retired', valves: 1 },
  ],
  course: [
    { period: '2025 Q4', numerator: 0, denominator: 118, percent: 0 },
    { period: '2026 Q1', numerator: 0, denominator: 0, percent: null },
    { period: '2026 Q2', numerator: 3, denominator: 120, percent: 2.5 },
  ],
} as Percent
const plain = (text: string | null) => text?.replaceAll('\u00a0', ' ')

describe('percent leaking', () => {
  it('is said with what it is of, what is allowed, how sure it is and who does not count', () => {
    expect(plain(percentSays(percent))).toBe(
      '3 of 120 valves monitored in the quarter that runs leak or leaked: 2.5 %, above the 2 % that the rule allows.',
    )
    expect(plain(limitsSay(percent))).toBe('By so many valves it may be 0.5 % to 7.1 % (95 times in 100).')
    expect(excludedSays(percent)).toBe('Not counted: 3 unsafe to monitor; 1 retired.')
  })

  it('is not said where nobody looked, nor against a limit that no rule has', () => {
    const none = { ...percent, percent: null, lower: null, upper: null, excluded: [] }
    expect(percentSays(none)).toContain('No valve')
    expect([limitsSay(none), excludedSays(none)]).toEqual([null, null])
    expect(percentSays({ ...percent, allowed: null })).toContain('allows any percentage')
    expect(percentSays({ ...percent, isAbove: false })).toContain('not above')
  })

  it('is told by quarter for who does not see it', () => {
    expect(plain(courseSays(percent))).toBe(
      'Percent leaking by quarter. 2025 Q4: 0 of 118, 0 %; 2026 Q1: none monitored; 2026 Q2: 3 of 120, 2.5 %. 2 % allowed.',
    )
  })

  it('is drawn from zero, a quarter without looks has no column, and the last one runs', () => {
    const { bars, base, allowed } = percentFrame(percent, 400)
    expect(bars.map(({ top }) => top)).toEqual([base, null, 22])
    expect(bars.map(({ isRunning }) => isRunning)).toEqual([false, false, true])
    expect(bars.map(({ year, counts }) => [year, counts])).toEqual([
      ['2025', '0/118'],
      ['2026', 'none'],
      [null, '3/120'],
    ])
    // 2 of 2.5 % of 120 px.
    expect(base - (allowed ?? 0)).toBeCloseTo(96, 6)
  })

  it('keeps the line of what is allowed in sight when nothing leaks', () => {
    const { allowed } = percentFrame({ ...percent, allowed: 5 as never, course: percent.course.slice(0, 1) }, 400)
    expect(allowed).toBeGreaterThan(22)
  })
})

it('the route has its areas in the order they are walked, each once', () => {
  const looks = ['BM', 'BH', 'BM'].map((areaCode, place) => ({ areaCode, tag: String(place) }))
  expect(byArea(looks).map(({ areaCode, looks: own }) => [areaCode, own.map(({ tag }) => tag)])).toEqual([
    ['BM', ['0', '2']],
    ['BH', ['1']],
  ])
})
