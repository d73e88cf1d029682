import { PackingLife } from '@glandkeeper/contract/valves'
import { ReservePoint } from '@glandkeeper/contract/reserve'
import type { GlandState } from '@glandkeeper/contract/reserve'
import { expect, test } from 'vitest'
import { bandsOf, forecastOf, plotFrame, type PlotInput, stairOf } from './reserve-geometry.ts'

const points = (...list: [at: string, reserve: number | null, isInferred: boolean][]) =>
  list.map(([at, reserve, isInferred]) => ReservePoint.parse({ at: `${at}T09:00:00Z`, reserve, isInferred }))
const life = (from: string | null, to: string | null) =>
  PackingLife.parse({ from: from && `${from}T09:00:00Z`, to: to && `${to}T09:00:00Z`, family: null, rings: null })
const stateOf = (reserve: number | null, runsOutOn: string | null) =>
  ({ reserve, runsOutOn }) as Pick<GlandState, 'reserve' | 'runsOutOn'>

const input: PlotInput = {
  points: points(['2024-03-01', 6, false], ['2025-01-15', 5.1, true], ['2025-09-01', 4.2, true], ['2026-02-01', 3.6, false]),
  lives: [life(null, '2024-03-01'), life('2024-03-01', null)],
  state: stateOf(3.6, '2026-10-14'),
  now: new Date('2026-05-04T10:00:00Z'),
  timeZone: 'Europe/London',
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
  const frame = plotFrame({ ...input, state: stateOf(3.6, null) })
  expect((frame.right - frame.today) / (frame.right - frame.left)).toBeGreaterThanOrEqual(0.199)
})

test('the forecast starts at the last point and ends at zero on its day', () => {
  const frame = plotFrame(input)
  const forecast = forecastOf(input, frame)
  expect(forecast?.from).toEqual([frame.x('2026-02-01T09:00:00Z'), frame.y(3.6)])
  expect(forecast?.to[0]).toBeCloseTo(frame.xOfDay('2026-10-14'), 6)
  expect(forecast?.to[1]).toBeCloseTo(frame.y(0), 6)
  expect(forecast?.label).toBe('straight line: used up 14 Oct 2026')
})

test('a forecast past the edge is cut off on its own line, not bent to the corner', () => {
  const far = { ...input, state: stateOf(3.6, '2040-01-01') }
  const frame = plotFrame(far)
  const forecast = forecastOf(far, frame)
  expect(forecast?.to[0]).toBeCloseTo(frame.right, 6)
  const [x0, y0] = forecast?.from ?? [0, 0]
  const [x1, y1] = forecast?.to ?? [0, 0]
  expect((y1 - y0) / (x1 - x0)).toBeCloseTo((frame.y(0) - y0) / (frame.xOfDay('2040-01-01') - x0), 6)
})

test('a spent gland has no forecast', () => {
  const spent = { ...input, points: points(['2026-02-01', -0.4, false]), state: stateOf(-0.4, '2026-02-01') }
  expect(forecastOf(spent, plotFrame(spent))).toBeNull()
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
