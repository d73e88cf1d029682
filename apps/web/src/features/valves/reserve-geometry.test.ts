import { PackingLife } from '@glandkeeper/contract/valves'
import { ReservePoint } from '@glandkeeper/contract/reserve'
import type { ReserveForecast } from '@glandkeeper/contract/reserve'
import { expect, test } from 'vitest'
import { bandsOf, plotFrame, type PlotInput, stairOf } from './reserve-geometry.ts'

const points = (...list: [at: string, reserve: number | null, isInferred: boolean][]) =>
  list.map(([at, reserve, isInferred]) => ReservePoint.parse({ at: `${at}T09:00:00Z`, reserve, isInferred }))
const life = (from: string | null, to: string | null) =>
  PackingLife.parse({ from: from && `${from}T09:00:00Z`, to: to && `${to}T09:00:00Z`, family: null, rings: null })
const forecast = (fields: Partial<ReserveForecast>) =>
  ({ stopOn: '2026-06-09', late: null, middle: null, early: null, level: 3.5, ...fields }) as ReserveForecast
const stateOf = (reserve: number | null, ahead: ReserveForecast | null = null) =>
  ({ reserve, forecast: ahead, standing: 'watch' }) as PlotInput['state']

const input: PlotInput = {
  points: points(['2024-03-01', 6, false], ['2025-01-15', 5.1, true], ['2025-09-01', 4.2, true], ['2026-02-01', 3.6, false]),
  lives: [life(null, '2024-03-01'), life('2024-03-01', null)],
  state: stateOf(3.6),
  now: new Date('2026-05-04T10:00:00Z'),
  timeZone: 'Europe/London',
  plannedStopOn: null,
  width: 592,
}

test('the past is a stair: every course runs level or upright, never sloped', () => {
  const courses = stairOf(input.points, plotFrame(input))
  expect(courses.length).toBeGreaterThan(0)
  for (const { path } of courses) expect(path).toMatch(/^M[\d.]+ [\d.]+(?:[HV][\d.]+)+$/)
})

test('what was measured is one course and what was worked out from turns another', () => {
  expect(stairOf(input.points, plotFrame(input)).map(({ isInferred }) => isInferred)).toEqual([false, true, false])
})

test('the stair keeps its last level until today and breaks where the reserve is not known', () => {
  const gappy = { ...input, points: points(['2024-03-01', 6, false], ['2025-01-15', null, false], ['2026-02-01', 3.6, false]) }
  const frame = plotFrame(gappy)
  const courses = stairOf(gappy.points, frame)
  expect(courses).toHaveLength(2)
  const end = (path = '') => Number(path.split('H').at(-1))
  expect(end(courses[0]?.path)).toBeCloseTo(frame.x('2025-01-15T09:00:00Z'), 0)
  expect(end(courses[1]?.path)).toBeCloseTo(frame.today, 0)
})

test('a nip and the reading right after it are one step, at what was read', () => {
  const [first, nip, reading] = [
    ...points(['2024-03-01', 6, false]),
    ...points(['2025-01-15', 4.9, true]),
    ...points(['2025-01-15', 5.3, false]),
  ]
  if (!first || !nip || !reading) throw new Error('three points')
  const visit = { ...input, points: [first, nip, { ...reading, at: '2025-01-15T09:05:00Z' }] }
  const frame = plotFrame(visit)
  const drawn = stairOf(visit.points, frame)
    .map(({ path }) => path)
    .join('')
  expect(drawn).toContain(`V${Number(frame.y(5.3).toFixed(1))}`)
  expect(drawn).not.toContain(`V${Number(frame.y(4.9).toFixed(1))}`)
})

test('zero is on the axis, also when everything known lies above it or below it', () => {
  const above = plotFrame(input)
  expect(above.levels.map(({ mm }) => mm)).toContain(0)
  const below = plotFrame({ ...input, points: points(['2026-02-01', -3, false]) })
  expect(below.levels.map(({ mm }) => mm)).toContain(0)
  expect(below.y(-3)).toBeGreaterThan(below.y(0))
})

test('at least a fifth of the width is left for the future', () => {
  const frame = plotFrame({ ...input, state: stateOf(3.6) })
  expect((frame.right - frame.today) / (frame.right - frame.left)).toBeGreaterThanOrEqual(0.199)
})

test('most of the fan and the stop lie inside the plot, where that leaves room for the past', () => {
  const lateFan = plotFrame({ ...input, state: stateOf(3.6, forecast({ late: '2027-03-01' })) })
  expect(lateFan.xOfDay('2027-03-01')).toBeLessThan(lateFan.right)
  const lateStop = plotFrame({ ...input, state: stateOf(3.6, forecast({ stopOn: '2027-04-01' })) })
  expect(lateStop.xOfDay('2027-04-01')).toBeLessThan(lateStop.right)
  const far = plotFrame({ ...input, state: stateOf(3.6, forecast({ late: '2060-02-01' })) })
  expect((far.today - far.left) / (far.right - far.left)).toBeGreaterThan(0.6)
})

test('the plot is high enough for a level above every reading', () => {
  const top = (level: number) =>
    plotFrame({ ...input, state: stateOf(3.6, forecast({ level: level as ReserveForecast['level'] })) })
  expect(top(7).y(7)).toBe(top(6).y(6))
})

test('packing lives alternate and say their length, the last one so far', () => {
  const bands = bandsOf(
    { ...input, lives: [life('2022-05-01', '2024-03-01'), life('2024-03-01', null)] },
    plotFrame({ ...input, lives: [life('2022-05-01', '2024-03-01')] }),
  )
  expect(bands.map(({ isOdd }) => isOdd)).toEqual([false, true])
  expect(bands.map(({ lines }) => lines)).toEqual([
    ['life 1', '22 months'],
    ['life 2', '26 months', 'so far'],
  ])
})

test('the axis turns over to the new year by the clock of the site', () => {
  const auckland = plotFrame({ ...input, timeZone: 'Pacific/Auckland' })
  const year = auckland.times.find(({ label }) => label === '2026')
  expect(year?.x).toBeCloseTo(auckland.x('2025-12-31T11:00:00Z'), 6)
})
