import { describe, expect, it } from 'vitest'
import { monthFrame } from './month-geometry.ts'

/** 25 months from November 2024 to November 2026; the last November has 10 leaks, the one before 4. */
const months = Array.from({ length: 25 }, (_, index) => {
  const at = new Date(Date.UTC(2024, 10 + index, 1))
  return { month: at.toISOString().slice(0, 7), leaks: index === 24 ? 10 : index === 12 ? 4 : 2 }
})

describe('on a desk', () => {
  const frame = monthFrame(months, 1034)
  it('25 months stand in one strip of the whole width, with bars from zero', () => {
    expect(frame.strips).toHaveLength(1)
    expect(frame.bars.map(({ width }) => width)).toEqual(months.map(() => 40))
    const last = frame.bars.at(-1)
    expect(last && last.left + last.width).toBe(1034)
    expect(frame.strips[0]?.levels[0]).toEqual({ y: frame.strips[0]?.base, label: '0' })
    // 10 leaks take the whole height, 2 a fifth of it.
    expect(frame.bars.map(({ base, top }) => base - top).slice(-2)).toEqual([30, 150].map((px) => expect.closeTo(px, 9)))
  })

  it('each month from the thirteenth on knows the same month a year before', () => {
    const [first, second] = [frame.bars[11], frame.bars[24]]
    expect([first?.before, first?.yearBefore]).toEqual([null, null])
    expect(second?.before).toEqual(months[12])
    expect((second?.base ?? 0) - (second?.yearBefore ?? 0)).toBeCloseTo(60, 9)
  })

  it('the year is said in January, and at the beginning where there is room before January', () => {
    expect(frame.bars.filter(({ year }) => year !== null).map(({ month }) => month)).toEqual(['2024-11', '2025-01', '2026-01'])
    expect(frame.bars[2]?.label).toBe('Jan')
  })
})

describe('on a phone', () => {
  const frame = monthFrame(months, 358)
  it('a month stands under the same month of the year before, wide enough for a finger', () => {
    expect(frame.strips).toHaveLength(2)
    expect(frame.bars[0]?.left).toBe(frame.bars[12]?.left)
    expect(frame.bars[11]?.left).toBe(frame.bars[23]?.left)
    expect(frame.bars[12]?.base).toBeGreaterThan(frame.bars[0]?.base ?? Infinity)
    expect(Math.min(...frame.bars.map(({ width }) => width))).toBeGreaterThanOrEqual(24)
    expect(frame.bars[2]?.label).toBe('J')
  })

  it('both strips have one scale', () => {
    const heights = frame.bars.map(({ base, top }) => base - top)
    // Two leaks of ten: a fifth of 96 px.
    expect([heights[0], heights[13]]).toEqual([expect.closeTo(19.2, 9), expect.closeTo(19.2, 9)])
    expect(Math.max(...heights)).toBeCloseTo(96, 9)
  })
})

it('without a leak the bars lie on the zero line, and only whole leaks are levels', () => {
  const frame = monthFrame(
    months.map(({ month }) => ({ month, leaks: 0 })),
    1034,
  )
  expect(frame.bars.every(({ base, top }) => base === top)).toBe(true)
  expect(frame.strips[0]?.levels.map(({ label }) => label)).toEqual(['0', '1'])
})

it('the figure of a bar stands above the line of the year before where that would cross it', () => {
  const [none, crossing, above] = [0, 11, 20].map((before) => {
    const given = months.map(({ month }, index) => ({
      month,
      leaks: index === 24 ? 10 : index === 12 ? before : index === 0 ? 30 : 1,
    }))
    return monthFrame(given, 1034).bars.at(-1)
  })
  // A leak is 5 px high.
  expect(none && none.top - none.figureY).toBeCloseTo(5, 9)
  expect(crossing && crossing.top - crossing.figureY).toBeCloseTo(10, 9)
  expect(above && above.top - above.figureY).toBeCloseTo(5, 9)
})
