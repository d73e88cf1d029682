import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Metre, metres, type Stairs, type WalkingPlace, walksBetween } from './walking-distance.ts'
import { walkingOrder, type WalkingOrderInput } from './walking-order.ts'

const place = (east: number, north: number, level = 0): WalkingPlace => ({ east: metres(east), north: metres(north), level })
const onLine = (...east: number[]): WalkingPlace[] => east.map((each) => place(each, 0))
const input = (stops: WalkingPlace[], more: Partial<WalkingOrderInput> = {}): WalkingOrderInput =>
  Object.freeze({ stops, wayIn: null, stairs: [], levelWorth: metres(15), seed: 1, ...more })
const ordered = (given: WalkingOrderInput) => {
  const found = walkingOrder(given)
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}
const tower: Stairs = { east: metres(0), north: metres(0), lowestLevel: 0, highestLevel: 3 }

describe('the walking order', () => {
  it.each([
    ['of no stops is none', [], [], 0],
    ['of one stop is to stand there', onLine(7), [0], 0],
    ['of two stops is as given', onLine(9, 4), [0, 1], 5],
    ['of three begins at an end of the line, the one given earlier: 6 + 4', onLine(10, 0, 4), [0, 2, 1], 10],
    ['of stops on the same spot is as given', onLine(3, 3, 3, 3), [0, 1, 2, 3], 0],
    ['of a line given by leaps is the line', onLine(0, 30, 10, 50, 20, 40), [0, 2, 4, 1, 5, 3], 50],
  ])('%s', (_, stops, order, walked) => {
    expect(ordered(input(stops))).toMatchObject({ order, metres: walked, levels: 0 })
  })

  it.each([
    ['no stop, no walk', [], [], 0],
    ['one stop: there and back', onLine(7), [0], 14],
    ['two stops: out, on, and back, 4 + 5 + 9', onLine(9, 4), [0, 1], 18],
    ['three corners of a square, from the fourth', [place(10, 10), place(0, 10), place(10, 0)], [1, 0, 2], 40],
  ])('from a way in and back to it: %s', (_, stops, order, walked) => {
    expect(ordered(input(stops, { wayIn: place(0, 0) }))).toMatchObject({ order, metres: walked })
  })

  it('saves 1 - 20 / 30 of the order as given, and nothing of the best', () => {
    expect(ordered(input(onLine(0, 20, 10))).shareSaved).toBeCloseTo(1 / 3, 12)
    expect(ordered(input(onLine(0, 10, 20))).shareSaved).toBe(0)
  })

  it('finishes a level before it climbs, when climbing is dear: 30 m there, 1 level, 30 m back', () => {
    const stops = [place(0, 0), place(0, 0, 1), place(30, 0), place(30, 0, 1)]
    const stairs = [tower]
    expect(ordered(input(stops, { stairs, levelWorth: metres(15) }))).toMatchObject({
      order: [2, 0, 1, 3],
      metres: 60,
      levels: 1,
    })
  })

  it('counts levels up and down, and weighs them in what is saved', () => {
    const stops = [place(0, 0), place(0, 0, 2), place(0, 0, 1), place(0, 0, 3)]
    const found = ordered(input(stops, { stairs: [tower], levelWorth: metres(10), wayIn: place(5, 0) }))
    // As given 2 + 1 + 2 + 3 = 8 levels, now 6, with 10 m on the flat: 1 - 70 / 90.
    expect(found).toMatchObject({ metres: 10, levels: 6 })
    expect(found.shareSaved).toBeCloseTo(1 - 70 / 90, 12)
  })

  it.each([
    ['a place that is none', 'walk/place', input([{ ...place(0, 0), north: Number.NaN as Metre }])],
    ['a level no stairs reach', 'walk/level-not-reached', input([place(0, 0), place(0, 0, 4)], { stairs: [tower] })],
    ['a level worth less than nothing', 'walk/level-worth', input(onLine(1, 2), { levelWorth: metres(-1) })],
    ['a level worth no number', 'walk/level-worth', input(onLine(1, 2), { levelWorth: Number.NaN as Metre })],
    ['a seed that is no whole number', 'walk/setting', input(onLine(1, 2), { seed: Number.NaN })],
  ])('refuses %s: %s', (_, code, given) => {
    expect(walkingOrder(given)).toMatchObject({ ok: false, problem: { code } })
  })

  it('of 200 stops on four levels takes well under a second', () => {
    const stops = Array.from({ length: 200 }, (_, stop) => place((stop * 7919) % 101, (stop * 104_729) % 97, stop % 4))
    const given = input(stops, { stairs: [tower, { ...tower, east: metres(90) }], wayIn: place(0, 0) })
    const taken: number[] = []
    // The best of three: the machine does other things meanwhile.
    while (taken.length < 3) {
      const begun = performance.now()
      ordered(given)
      taken.push(performance.now() - begun)
    }
    expect(Math.min(...taken)).toBeLessThan(1000)
    expect(ordered(given).shareSaved).toBeGreaterThan(0.5)
  })
})

const metre = fc.integer({ min: 0, max: 80 })
const somewhere = fc.tuple(metre, metre, fc.integer({ min: 0, max: 3 })).map((numbers) => place(...numbers))
const walks = (most: number) =>
  fc
    .record({
      stops: fc.array(somewhere, { maxLength: most }),
      wayIn: fc.option(somewhere, { nil: null }),
      stairs: fc.constantFrom([], [tower], [tower, { ...tower, east: metres(60), lowestLevel: 1 }]),
      seed: fc.integer(),
    })
    .map(({ stops, ...more }) => input(stops, more))

/** Metres + levels * worth of an order, leg by leg. */
function costOf(given: WalkingOrderInput, order: readonly number[]): number {
  const found = walksBetween(given)
  if (!found.ok) throw new Error(found.problem.detail)
  const nodes = [order.length, ...order, order.length]
  return nodes.slice(1).reduce((sum, to, leg) => {
    const walk = found.between(nodes[leg]!, to)
    return sum + walk.metres + given.levelWorth * walk.levels
  }, 0)
}

function* ordersOf(numbers: readonly number[]): Generator<number[]> {
  if (numbers.length === 0) yield []
  for (const first of numbers) for (const rest of ordersOf(numbers.filter((number) => number !== first))) yield [first, ...rest]
}

describe('any walking order', () => {
  it('holds every stop once, is never longer than as given, says what it saves, and is the same for the same seed', () => {
    fc.assert(
      fc.property(walks(25), (given) => {
        const found = ordered(given)
        const asGiven = [...given.stops.keys()]
        const before = costOf(given, asGiven)
        const cost = found.metres + given.levelWorth * found.levels
        expect(found.order.toSorted((a, b) => a - b)).toEqual(asGiven)
        expect(found.order[0] ?? 0).toBeLessThanOrEqual(found.order.at(-1) ?? 0)
        expect(cost).toBeCloseTo(costOf(given, found.order), 9)
        // But for binary dust: the same legs are added up here in another order.
        expect(cost).toBeLessThanOrEqual(before * (1 + 1e-12))
        expect(found.shareSaved).toBeCloseTo(before === 0 ? 0 : 1 - cost / before, 9)
        expect(ordered(given)).toEqual(found)
      }),
      { numRuns: 60 },
    )
  })

  it('is the shortest of all orders of up to 6 stops', () => {
    fc.assert(
      fc.property(walks(6), (given) => {
        let least = Infinity
        for (const order of ordersOf([...given.stops.keys()])) least = Math.min(least, costOf(given, order))
        const found = ordered(given)
        expect(found.metres + given.levelWorth * found.levels).toBeCloseTo(least, 9)
      }),
      { numRuns: 40 },
    )
  })

  it('gives finite figures or a named problem for any doubles', () => {
    const number = fc.oneof(fc.double(), fc.constantFrom(0, 1, -0, 1e308, Infinity, Number.NaN))
    const doubles = fc.record({ east: number, north: number, level: fc.oneof(number, fc.integer({ min: 0, max: 2 })) })
    fc.assert(
      fc.property(
        fc.array(doubles, { maxLength: 4 }),
        fc.option(doubles, { nil: null }),
        number,
        number,
        (all, wayIn, worth, seed) => {
          const found = walkingOrder({ stops: all, wayIn, stairs: [], levelWorth: worth, seed } as unknown as WalkingOrderInput)
          if (found.ok) expect(JSON.stringify(found)).not.toMatch(/null/)
          else expect(found.problem.code).toMatch(/^walk\/[a-z-]+$/)
        },
      ),
      { numRuns: 400 },
    )
  })
})
