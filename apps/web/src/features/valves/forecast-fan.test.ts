import { ReserveForecast, ReservePoint } from '@glandkeeper/contract/reserve'
import { expect, test } from 'vitest'
import { fanOf, forecastInWords, leftOutMarks, stopMark } from './forecast-fan.ts'
import { leansOn } from './forecast-says.tsx'
import { plotFrame, type PlotInput } from './reserve-geometry.ts'

const forecast = (fields: Record<string, unknown> = {}) =>
  ReserveForecast.parse({
    countedFrom: '2026-02-01T09:00:00Z',
    level: 3.5,
    levelDeviation: 0.2,
    earliest: '2026-08-01',
    early: '2026-09-03',
    middle: '2026-10-14',
    late: '2026-12-20',
    latest: '2027-02-01',
    chanceBeforeStop: 0.644,
    stopOn: '2026-10-20',
    readingsUsed: 12,
    earlierLivesUsed: 2,
    leftOut: [],
    group: 'steam · graphite braid',
    origin: 'fitted to the group',
    says: [],
    ...fields,
  })
const inputOf = (fields: Record<string, unknown> = {}, reserve: number | null = 3.6): PlotInput => ({
  points: [
    ReservePoint.parse({ at: '2022-03-01T09:00:00Z', reserve: 6, isInferred: false }),
    ReservePoint.parse({ at: '2026-02-01T09:00:00Z', reserve: 3.6, isInferred: false }),
  ],
  lives: [],
  state: { reserve: reserve as PlotInput['state']['reserve'], forecast: forecast(fields), standing: 'watch' },
  now: new Date('2026-05-04T10:00:00Z'),
  timeZone: 'Europe/London',
  plannedStopOn: '2027-03-01',
  width: 592,
})
const drawn = (input: PlotInput) => ({ fan: fanOf(input, plotFrame(input)), frame: plotFrame(input) })
const pointsOf = (path = '') =>
  path
    .replace(/[MZ]/g, '')
    .split('L')
    .map((pair) => pair.split(' ').map(Number))

test('the middle starts at the smooth level where it was counted from and ends on the zero line on its day', () => {
  const { fan, frame } = drawn(inputOf())
  const [start, end, ...more] = pointsOf(fan?.middle)
  expect(more).toEqual([])
  expect(start?.[0]).toBeCloseTo(frame.x('2026-02-01T09:00:00Z'), 0)
  expect(start?.[1]).toBeCloseTo(frame.y(3.5), 0)
  expect(end?.[0]).toBeCloseTo(frame.xOfDay('2026-10-14'), 0)
  expect(end?.[1]).toBeCloseTo(frame.y(0), 0)
})

test('the likely area lies within the widest, both end on the zero line', () => {
  const { fan, frame } = drawn(inputOf())
  const [, late, early] = pointsOf(fan?.likely)
  const [, latest, earliest] = pointsOf(fan?.widest)
  for (const end of [late, early, latest, earliest]) expect(end?.[1]).toBeCloseTo(frame.y(0), 0)
  const across = [earliest, early, late, latest].map((end) => end?.[0] ?? NaN)
  expect(across).toEqual(across.toSorted((one, other) => one - other))
})

test('a day beyond twenty years runs out of the plot on its own line, and the corner belongs to the area', () => {
  const { fan, frame } = drawn(inputOf({ late: '2026-12-20', latest: null }))
  const [start, latest, corner, earliest] = pointsOf(fan?.widest)
  expect(latest?.[0]).toBeCloseTo(frame.right, 0)
  expect(latest?.[1]).toBeLessThan(frame.y(0))
  expect(latest?.[1]).toBeGreaterThan(start?.[1] ?? NaN)
  expect(corner?.[0]).toBeCloseTo(frame.right, 0)
  expect(corner?.[1]).toBeCloseTo(frame.y(0), 0)
  expect(earliest?.[1]).toBeCloseTo(frame.y(0), 0)
})

test('where all days are beyond twenty years nothing reaches zero and nothing is broken', () => {
  const beyond = { earliest: null, early: null, middle: null, late: null, latest: null }
  const { fan, frame } = drawn(inputOf(beyond))
  for (const path of [fan?.middle, fan?.likely, fan?.widest]) {
    expect(path).not.toContain('NaN')
    for (const [x, y] of pointsOf(path)) {
      expect(x).toBeLessThanOrEqual(frame.right + 0.1)
      expect(y).toBeLessThan(frame.y(0))
    }
  }
})

test('a day of today or before falls straight down, never backwards', () => {
  const { fan, frame } = drawn(inputOf({ earliest: '2026-02-01', early: '2026-02-01' }))
  for (const [x] of pointsOf(fan?.likely)) expect(x).toBeGreaterThanOrEqual(frame.x('2026-02-01T09:00:00Z') - 0.1)
})

test('a spent gland has no fan, nor has one whose level is used up', () => {
  expect(drawn(inputOf({}, -0.4)).fan).toBeNull()
  expect(drawn(inputOf({ level: -0.1 })).fan).toBeNull()
})

test('the words give the interval and how sure it is', () => {
  const said = (fields: Record<string, unknown>) => forecastInWords(forecast(fields), inputOf().now, 'Europe/London')
  expect(said({})).toBe('used up 3 Sep to 20 Dec 2026, four times in five')
  expect(said({ late: null })).toBe('used up after 3 Sep 2026, nine times in ten')
  expect(said({ early: null, late: null })).toBe('lasts beyond twenty years, nine times in ten')
  expect(said({ early: '2026-04-01' })).toBe('used up by 20 Dec 2026, nine times in ten')
})

test('the stop stands on its day with the chance before it, and its words stay inside the plot', () => {
  const input = inputOf({ stopOn: '2027-03-01', late: '2026-12-20' })
  const frame = plotFrame(input)
  const stop = stopMark(input, frame)
  expect(stop?.label).toBe('stop 1 Mar 2027, 64\u00a0% before it')
  expect((stop?.left ?? 0) + (stop?.width ?? 0) / 2).toBeCloseTo(frame.xOfDay('2027-03-01'), 6)
  expect(stop).toMatchObject({ anchor: 'end', labelX: frame.right })
  expect(stopMark({ ...input, plannedStopOn: null }, frame)?.label).toBe('no stop planned, 64\u00a0% before 1 Mar 2027')
  expect(stopMark({ ...input, state: { ...input.state, forecast: null } }, frame)).toBeNull()
})

test('readings left out are marked where they were read, two close together with one word', () => {
  const leftOut = ['2022-06-01', '2022-06-03', '2026-01-30'].map((day, index) => ({
    at: `${day}T09:00:00Z`,
    reserve: 9 - index,
    why: 'far off its neighbours',
  }))
  const input = inputOf({ leftOut })
  const frame = plotFrame(input)
  const marks = leftOutMarks(input, frame)
  expect(marks.map(({ y }) => y)).toEqual([9, 8, 7].map((mm) => frame.y(mm)))
  expect(marks.map(({ label }) => label !== null)).toEqual([true, false, true])
})

test('what the forecast leans on is said with its counts', () => {
  expect(leansOn(forecast())).toBe(
    'Leans on 12 readings, 2 earlier packings and like valves: steam · graphite braid, fitted to the group.',
  )
  expect(leansOn(forecast({ readingsUsed: 1, earlierLivesUsed: 0, origin: 'set by us' }))).toBe(
    'Leans on 1 reading and values set by us for steam · graphite braid.',
  )
  expect(leansOn(forecast({ readingsUsed: 0, earlierLivesUsed: 0, origin: 'fitted to the plant' }))).toBe(
    'Leans on like valves: steam · graphite braid, fitted to the plant.',
  )
})
