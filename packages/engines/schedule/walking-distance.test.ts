import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Metre, metres, type Stairs, type WalkedArea, type WalkingPlace, walksBetween } from './walking-distance.ts'

const place = (east: number, north: number, level: number): WalkingPlace => ({ east: metres(east), north: metres(north), level })
const stairsAt = (east: number, north: number, lowestLevel: number, highestLevel: number): Stairs => ({
  east: metres(east),
  north: metres(north),
  lowestLevel,
  highestLevel,
})
const area = (stops: WalkingPlace[], stairs: Stairs[]): WalkedArea => ({
  stops,
  wayIn: null,
  stairs,
})
const walk = (input: WalkedArea, from = 0, to = 1) => {
  const walks = walksBetween(Object.freeze(input))
  return walks.ok ? walks.between(from, to) : walks.problem.code
}

describe('a walk between two stops', () => {
  const [low, high] = [place(0, 0, 0), place(30, 40, 2)]

  it.each([
    ['on one level is the straight line, 30 and 40 to 50', [low, place(30, 40, 0)], [stairsAt(9, 9, 0, 3)], 50, 0],
    ['without any stairs is the line in plan and the climb', [low, high], [], 50, 2],
    ['leads over the stairs: 30 + 40', [low, high], [stairsAt(30, 0, 0, 2)], 70, 2],
    ['leads over the nearer of two stairs', [low, high], [stairsAt(-90, 0, 0, 2), stairsAt(15, 20, -1, 5)], 50, 2],
    ['changes stairs on the level both reach: 10 + 20 + 40', [low, high], [stairsAt(10, 0, 0, 1), stairsAt(30, 0, 1, 2)], 70, 2],
  ])('%s', (_, stops, stairs, expectedMetres, levels) => {
    expect(walk(area(stops, stairs))).toEqual({ metres: expectedMetres, levels })
  })

  it('never climbs past the level it leads to, though the stairs go on: 10 + 30', () => {
    expect(walk(area([low, place(40, 0, 2)], [stairsAt(10, 0, 0, 3), stairsAt(40, 0, 2, 4)]))).toEqual({ metres: 40, levels: 2 })
  })

  it('leads down as well as up, over three stairs in a row: 5 + 5 + 5 + 5', () => {
    const stairs = [stairsAt(15, 0, -3, -2), stairsAt(5, 0, -1, 0), stairsAt(10, 0, -2, -1)]
    expect(walk(area([low, place(20, 0, -3)], stairs))).toEqual({ metres: 20, levels: 3 })
  })

  it('leads from the way in, which comes after the last stop; to nowhere it is none', () => {
    expect(walk({ ...area([low, high], []), wayIn: place(0, 10, 0) }, 2, 0)).toEqual({ metres: 10, levels: 0 })
    expect(walk(area([low, high], []), 2, 1)).toEqual({ metres: 0, levels: 0 })
  })

  it.each([
    ['a level no stairs reach', 'walk/level-not-reached', area([low, high], [stairsAt(0, 0, 0, 1)])],
    ['stairs that do not meet', 'walk/level-not-reached', area([low, high], [stairsAt(0, 0, -1, 0), stairsAt(0, 0, 1, 2)])],
    ['a way in no stairs reach', 'walk/level-not-reached', { ...area([low], [stairsAt(0, 0, 0, 1)]), wayIn: high }],
    ['a place that is none', 'walk/place', area([low, { ...high, east: Number.NaN as Metre }], [])],
    ['a place beyond the earth', 'walk/place', area([{ ...high, north: 1e9 as Metre }], [])],
    ['half a level', 'walk/place', area([{ ...high, level: 1.5 }], [])],
    ['a way in that is none', 'walk/place', { ...area([low], []), wayIn: { ...high, level: Infinity } }],
    ['stairs on one level', 'walk/stairs', area([low], [stairsAt(0, 0, 1, 1)])],
    ['stairs upside down', 'walk/stairs', area([low], [stairsAt(0, 0, 2, 1)])],
    ['stairs that are nowhere', 'walk/stairs', area([low], [{ ...stairsAt(0, 0, 0, 1), east: Infinity as Metre }])],
    ['stairs without end', 'walk/stairs', area([low], [stairsAt(0, 0, 0, Infinity)])],
    [
      'too many stops',
      'walk/too-many',
      area(
        Array.from({ length: 2001 }, () => low),
        [],
      ),
    ],
    [
      'too many stairs',
      'walk/too-many',
      area(
        [low],
        Array.from({ length: 101 }, () => stairsAt(0, 0, 0, 1)),
      ),
    ],
  ])('refuses %s: %s', (_, code, input) => expect(walk(input)).toBe(code))

  it('takes metres, not millimetres and not bare numbers', () => {
    // @ts-expect-error a bare number has no unit
    const bare: WalkingPlace = { east: 1, north: metres(2), level: 0 }
    expect(walk(area([bare, bare], []))).toEqual({ metres: 0, levels: 0 })
  })
})

/** Least cost by every leg between all stairs on every whole level, tried until all are the least. */
function leastCost({ stops, stairs }: WalkedArea, levelWorth: number): number {
  const landings = stairs.flatMap(({ lowestLevel, highestLevel, ...spot }, column) =>
    Array.from({ length: highestLevel - lowestLevel + 1 }, (_, up) => ({ ...spot, level: lowestLevel + up, column })),
  )
  const nodes = [...stops.map((stop, index) => ({ ...stop, column: -1 - index })), ...landings]
  const cost = nodes.map((one) =>
    nodes.map((other) => {
      if (one.level === other.level) return Math.hypot(one.east - other.east, one.north - other.north)
      return one.column === other.column ? levelWorth * Math.abs(one.level - other.level) : Infinity
    }),
  )
  for (const by of nodes.keys())
    for (const from of nodes.keys())
      for (const to of nodes.keys()) cost[from]![to] = Math.min(cost[from]![to]!, cost[from]![by]! + cost[by]![to]!)
  return cost[0]![1]!
}

it('walks between stops are the least over every level of all stairs, the same both ways, or there are none', () => {
  const metre = fc.integer({ min: 0, max: 60 })
  const level = fc.integer({ min: -2, max: 4 })
  const stop = fc.tuple(metre, metre, level).map((numbers) => place(...numbers))
  const stairs = fc.array(
    fc
      .tuple(metre, metre, fc.integer({ min: -2, max: 3 }), fc.integer({ min: 1, max: 3 }))
      .map(([east, north, lowest, rise]) => stairsAt(east, north, lowest, Math.min(4, lowest + rise))),
    { minLength: 1, maxLength: 5 },
  )
  let reached = 0
  fc.assert(
    fc.property(stop, stop, stairs, fc.integer({ min: 0, max: 30 }), (one, other, all, worth) => {
      const input = area([one, other], all)
      const least = leastCost(input, worth)
      const found = walk(input)
      if (typeof found === 'string') {
        expect([found, least]).toEqual(['walk/level-not-reached', Infinity])
        return
      }
      reached++
      expect(found.metres + worth * found.levels).toBeCloseTo(least, 9)
      expect(found.levels).toBe(Math.abs(one.level - other.level))
      expect(walk(input, 1, 0)).toEqual(found)
      const back = walk(area([other, one], all))
      expect(typeof back === 'string' ? Number.NaN : back.metres).toBeCloseTo(found.metres, 9)
    }),
    { numRuns: 400 },
  )
  expect(reached).toBeGreaterThan(100)
})
