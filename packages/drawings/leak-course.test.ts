import type { ReservePoint } from '@glandkeeper/contract/reserve'
import { describe, expect, it } from 'vitest'
import { type LeakCourse, leakCourse, leakTargets } from './leak-course.ts'

const point = (at: string, reserve: number | null, isInferred = false): ReservePoint =>
  ({ at, reserve, isInferred }) as unknown as ReservePoint

const course: LeakCourse = {
  from: '2026-01-01T00:00:00Z',
  to: '2026-04-11T00:00:00Z',
  times: [{ at: '2026-01-01T00:00:00Z', label: '2026' }],
  lives: [
    { from: null, family: null },
    { from: '2026-02-20T00:00:00Z', family: 'PTFE braid' },
  ],
  points: [point('2026-01-01T00:00:00Z', 10), point('2026-02-20T00:00:00Z', 6, true), point('2026-03-01T00:00:00Z', null)],
  nips: [
    { at: '2026-02-20T00:00:00Z', turns: 0.5 },
    { at: '2026-03-01T00:00:00Z', turns: -0.25 },
  ],
  sightings: [
    { at: '2026-02-20T00:00:00Z', grade: 'run' },
    { at: '2026-03-01T00:00:00Z', grade: 'dry' },
    { at: '2026-03-02T00:00:00Z', grade: null },
  ],
  open: [{ from: '2026-02-20T00:00:00Z', to: '2026-03-01T00:00:00Z' }],
  findings: [{ at: '2026-02-20T00:00:00Z' }],
  width: 1078,
}
const { shapes, says, height } = leakCourse(course)
const drawn = (d: RegExp) => shapes.filter((shape) => shape.kind === 'path' && d.test(shape.d))
const words = shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.says] : []))

describe('the course of a valve', () => {
  it('lays everything over one time axis: half way is half way in every row', () => {
    // 50 of 100 days: 66 and half of the 1,000 px between the edges.
    expect(drawn(/^M566(\.0)? /).length).toBeGreaterThanOrEqual(4)
  })

  it('steps down where the reserve falls, dashed where it was worked out, and stops where nobody knows', () => {
    const stairs = shapes.filter((shape) => shape.kind === 'path' && /^M[\d.]+ [\d.]+V[\d.]+H/.test(shape.d))
    expect(stairs).toMatchObject([{ d: 'M66 34V34H566' }, { d: 'M566 34V94H656', isDashed: true }])
  })

  it('draws half a turn whole, a quarter of one back half as far below the line', () => {
    expect(drawn(/^M566 228L566 212$/)).toHaveLength(1)
    expect(drawn(/^M656 228L656 236$/)).toHaveLength(1)
  })

  it('shows what only a meter saw by another shape, draws no dry look, and bars while a leak stood open', () => {
    expect(drawn(/h6v6h-6Z$/)).toHaveLength(1)
    expect(drawn(/c-6 9/)).toHaveLength(1)
    expect(drawn(/^M566 292L656 292/)).toHaveLength(1)
  })

  it('names each packing where there is room, by its number where there is little, and says it all in words', () => {
    expect(words).toEqual(expect.arrayContaining(['before the records', 'PTFE braid', '2026', 'findings']))
    const narrow = leakCourse({ ...course, width: 240 }).shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.says] : []))
    expect(narrow).toContain('1')
    expect(says).toBe('2 packings, 2 nips, leaks seen 2 times, open 1 times, 1 findings.')
    expect(height).toBeLessThan(400)
  })

  it('marks the leak that is looked at through all rows, and none where none is', () => {
    const pointer = (shown: number | null) =>
      leakCourse({ ...course, shown }).shapes.filter((shape) => shape.kind === 'path' && /^M566 .*l-6 9h12Z$/.test(shape.d))
    expect(pointer(0)).toHaveLength(1)
    expect([pointer(null), pointer(1)]).toEqual([[], []])
    expect(leakCourse({ ...course, shown: 0 }).shapes[0]).toMatchObject({
      paint: 'paperfill',
      d: 'M566 34L656 34L656 336L566 336Z',
    })
  })

  it('lets a leak of an hour be hit as well as one of nine days, each about its own bar', () => {
    const brief = { from: '2026-02-20T00:00:00Z', to: '2026-02-20T01:00:00Z' }
    const [long, short] = leakTargets({ ...course, open: [...course.open, brief] })
    expect(long).toMatchObject({ left: 566, width: 90 })
    expect(short?.width).toBe(24)
    expect((short?.left ?? 0) + 12).toBeCloseTo(566.75, 1)
  })
})
