import type { LeakStudy } from '@glandkeeper/contract/leak-study'
import { describe, expect, it } from 'vitest'
import { courseFrame, timeInWords } from './course-geometry.ts'

const YEAR = 365.25
const steps = [
  { days: YEAR, atRisk: 40, mean: 0.5, lower: null, upper: null },
  { days: 2 * YEAR, atRisk: 30, mean: 1, lower: 0.5, upper: 1.5 },
  { days: 4 * YEAR, atRisk: 12, mean: 1.5, lower: 1, upper: 2 },
] as unknown as LeakStudy['meanCourse']

describe('the mean course', () => {
  // 400 px for four years from 40, 210 px for two leaks up from 224.
  const frame = courseFrame(steps, 496)

  it('is a stair from zero: it stands still until a leak was seen', () => {
    expect(frame.course).toBe('M40 224H140V171.5H240V119H440V66.5')
    expect(frame.end).toEqual({ x: 440, y: 66.5, mean: 1.5 })
  })

  it('the band goes forth along the upper and back along the lower limits, as stairs too', () => {
    expect(frame.band).toBe('M240 66.5H440V14V119H440V171.5H240Z')
  })

  it('under each time stand the valves watched so long', () => {
    expect(frame.times.map(({ x, label, watched }) => [x, label, watched])).toEqual([
      [40, '0', 40],
      [140, '1 year', 40],
      [240, '2 years', 30],
      [340, '3 years', 12],
      [440, '4 years', 12],
    ])
  })

  it('zero is a level', () => expect(frame.levels[0]).toEqual({ y: 224, label: '0' }))
})

it('a course without steps is an empty plot, not a broken one', () => {
  const frame = courseFrame([], 496)
  expect([frame.course, frame.band, frame.end]).toEqual(['M40 224', '', null])
  expect(frame.times.every(({ x, watched }) => Number.isFinite(x) && watched === 0)).toBe(true)
})

it.each([
  [0, '0'],
  [0.5, '6 months'],
  [1 / 12, '1 month'],
  [1, '1 year'],
  [1.5, '1.5 years'],
])('%d years are %s', (years, words) => expect(timeInWords(years)).toBe(words))
