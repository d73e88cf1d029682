import { megapascals, mm, newtonMetres, ratio, turns } from '@glandkeeper/units/quantity'
import { describe, expect, it } from 'vitest'
import type { Drawing, Paint, PathShape } from './drawing.ts'
import { effortBarsDrawing } from './effort-bars.ts'
import { leakBarsDrawing } from './leak-bars.ts'
import { openingDrawing } from './opening.ts'
import { stressRangeDrawing } from './stress-range.ts'
import { studThreadDrawing } from './stud-thread.ts'
import { threadDepth, threadProfile } from './thread-profile.ts'
import { torqueStairDrawing } from './torque-stair.ts'

const ends = ({ d }: PathShape) =>
  [...d.matchAll(/[MLA](?:[-\d.]+ [-\d.]+ 0 \d \d )?([-\d.]+) ([-\d.]+)/g)].map((match) => ({
    x: Number(match[1]),
    y: Number(match[2]),
  }))
const paths = ({ shapes }: Drawing, paint: Paint) =>
  shapes.filter((shape): shape is PathShape => shape.kind === 'path' && shape.paint === paint)
const spread = (values: number[]) => Math.max(...values) - Math.min(...values)
const wide = (shape: PathShape) => spread(ends(shape).map(({ x }) => x))
const tall = (shape: PathShape) => spread(ends(shape).map(({ y }) => y))
const words = ({ shapes }: Drawing) => shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.says] : []))

describe('the thread of a stud', () => {
  const thread = { designation: 'M12', pitch: mm(1.75), isWhitworth: false, turns: turns(0.5), room: 500 }
  /** The travels in px, in the order drawn: short ones have a thin line between outside arrows. */
  const travelled = (drawing: Drawing) => [...paths(drawing, 'thin'), ...paths(drawing, 'dim')].map(tall)

  it('travels a sixth, a quarter, a half and the whole of the distance between two crests', () => {
    const outline = ends(paths(studThreadDrawing(thread), 'paperfill out')[0]!)
    const crest = Math.max(...outline.map(({ x }) => x))
    const [first, , third] = outline.filter(({ x }) => x === crest).map(({ y }) => y)
    const pitch = third! - first!
    expect(travelled(studThreadDrawing(thread)).map((px) => px / pitch)).toEqual(
      [1 / 6, 1 / 4, 1 / 2, 1].map((share) => expect.closeTo(share, 4) as number),
    )
    expect(words(studThreadDrawing(thread))).toEqual(expect.arrayContaining(['0.29', '0.44', '0.88', '1.75']))
  })

  it('shows the turns asked for where they are none of these, and not where they are off the drawing', () => {
    expect(travelled(studThreadDrawing({ ...thread, turns: turns(0.75) }))).toHaveLength(5)
    expect(travelled(studThreadDrawing({ ...thread, turns: turns(9) }))).toHaveLength(4)
  })

  it.each([
    [false, 30],
    [true, 27.5],
  ])('has flanks of its own angle (Whitworth: %s)', (isWhitworth, angle) => {
    const d = threadProfile({ core: 0, edge: 200, top: 0, crests: 1, pitch: 100, isWhitworth })
    const outline = ends({ kind: 'path', d, paint: 'out' })
    const [foot, shoulder] = [outline[2]!, outline[3]!]
    expect(Math.atan((shoulder.y - foot.y) / (shoulder.x - foot.x)) * (180 / Math.PI)).toBeCloseTo(angle, 2)
    expect(200 - outline[1]!.x).toBeCloseTo(threadDepth(isWhitworth) * 100, 2)
  })
})

describe('torque in steps', () => {
  const stair = {
    steps: [0.3, 0.6, 1].map((share) => ({ share: ratio(share), torque: newtonMetres(share * 40) })),
    utilisation: ratio(0.5),
    utilisationAtMost: ratio(0.6),
    limit: ratio(0.7),
    room: 400,
  }

  it('rises to half of the proof line where the studs carry half, in the shares of the steps', () => {
    const drawing = torqueStairDrawing(stair)
    const columns = paths(drawing, 'plain out')
    const floor = Math.max(...ends(columns[0]!).map(({ y }) => y))
    const proof = floor - ends(paths(drawing, 'out')[0]!)[0]!.y
    expect(columns.map((column) => tall(column) / proof)).toEqual(
      [0.15, 0.3, 0.5].map((share) => expect.closeTo(share, 4) as number),
    )
    expect((floor - ends(paths(drawing, 'ghost')[2]!)[0]!.y) / proof).toBeCloseTo(0.6, 4)
  })

  it('stays on the drawing when the studs would be torn, and gives no torque', () => {
    const drawing = torqueStairDrawing({ ...stair, steps: [], utilisation: ratio(80), utilisationAtMost: ratio(90) })
    const [column] = paths(drawing, 'plain out')
    expect(Math.min(...ends(column!).map(({ y }) => y))).toBeGreaterThanOrEqual(0)
    expect(words(drawing).join()).toContain('no torque is given')
  })
})

it('the stress of a measured torque spans from the least to the most on a scale from nought', () => {
  const of = { lowest: megapascals(10), usual: megapascals(20), highest: megapascals(30), least: [], room: 400 }
  const drawing = stressRangeDrawing({ ...of, least: [{ packing: 'braided', stress: megapascals(40) }] })
  const [bar] = paths(drawing, 'plain out')
  const [scale, needed] = [
    paths(drawing, 'thin').find((shape) => shape.isDashed !== true)!,
    paths(drawing, 'thin').find(({ isDashed }) => isDashed)!,
  ]
  const zero = Math.min(...ends(scale).map(({ x }) => x))
  const from = Math.min(...ends(bar!).map(({ x }) => x)) - zero
  expect(wide(bar!) / from).toBeCloseTo(2, 3)
  expect((ends(needed)[0]!.x - zero) / from).toBeCloseTo(4, 3)
  expect((ends(paths(drawing, 'out')[0]!)[0]!.x - zero) / from).toBeCloseTo(2, 3)
})

describe('effort', () => {
  const thrust = { what: 'Thrust', taken: 5000, has: 20_000, hasSays: 'the drive', allowed: 6000, unit: 'N' }

  it('fills as much of the outline as it takes, with the line at what it may take', () => {
    const drawing = effortBarsDrawing({ efforts: [thrust], room: 400 })
    const outline = wide(paths(drawing, 'paperfill out')[0]!)
    expect(wide(paths(drawing, 'plain out')[0]!) / outline).toBeCloseTo(0.25, 4)
    const [left] = ends(paths(drawing, 'paperfill out')[0]!)
    expect((ends(paths(drawing, 'hotline')[0]!)[0]!.x - left!.x) / outline).toBeCloseTo(0.3, 4)
  })

  it('far beyond what there is is drawn broken, inside its room', () => {
    const drawing = effortBarsDrawing({ efforts: [{ ...thrust, taken: 2e6 }], room: 400 })
    expect(wide(paths(drawing, 'plain out')[0]!) / wide(paths(drawing, 'paperfill out')[0]!)).toBeCloseTo(3, 4)
    expect(paths(drawing, 'out')).toHaveLength(2)
    expect(
      Math.max(
        ...paths(drawing, 'out')
          .flatMap(ends)
          .map(({ x }) => x),
      ),
    ).toBeLessThanOrEqual(400)
  })
})

describe('an opening', () => {
  /** Width of each hole, and mm for a px by the bar under it. */
  const holes = (opening: number) => {
    const drawing = openingDrawing({ opening: mm(opening), room: 400 })
    const bars = words(drawing).flatMap((says) => (/^[\d.]+\u00a0mm$/.test(says) ? [Number.parseFloat(says)] : []))
    return paths(drawing, 'hotfill').map((hole, index) => ({
      px: wide(hole),
      mm: (wide(hole) * bars[index]!) / wide(paths(drawing, 'thin')[index]!),
    }))
  }

  it.each([0.05, 1, 6, 100])('of %d mm measures as much by the bar under each hole', (opening) => {
    for (const hole of holes(opening)) expect(hole.mm / opening).toBeCloseTo(1, 1)
  })

  it('of 10 mm has its true size, where 96 px are an inch', () => {
    expect(holes(10)[0]!.px).toBeCloseTo((10 * 96) / 25.4, 2)
  })

  it('that would be a dot is enlarged beside it, one that would not fit is made smaller', () => {
    expect(holes(1)).toHaveLength(2)
    expect(holes(100)).toHaveLength(1)
    expect(holes(100)[0]!.px).toBeLessThan(130)
  })
})

describe('bars of a leak', () => {
  const bars = [8, 4, 1].map((amount) => ({ says: `by ${amount}`, amount, isMain: amount === 8 }))

  it('are as long as what leaks, over a scale from nought', () => {
    const drawing = leakBarsDrawing({ bars, unit: 'kg/h', room: 400 })
    const [main, others] = [paths(drawing, 'plain out').map(wide), paths(drawing, 'paperfill out').map(wide)]
    expect(others.map((px) => px / main[0]!)).toEqual([expect.closeTo(0.5, 3), expect.closeTo(0.125, 3)])
    const ticks = paths(drawing, 'hair').map((tick) => ends(tick)[0]!.x)
    expect((ticks[1]! - ticks[0]!) / main[0]!).toBeCloseTo(2 / 8, 3)
  })

  it('of no leak have no length, and a scale all the same', () => {
    const drawing = leakBarsDrawing({ bars: bars.map((bar) => ({ ...bar, amount: 0 })), unit: 'kg/h', room: 400 })
    expect(JSON.stringify(drawing)).not.toMatch(/NaN|null/)
    expect(paths(drawing, 'plain out').map(wide)).toEqual([0])
  })
})
