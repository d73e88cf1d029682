/** A spot of the plan; metres east and north of the same point for all. */
export interface PlanPoint {
  readonly east: number
  readonly north: number
}

/** Somewhere on one level; levels are whole numbers, counted upwards. */
export interface LevelPoint extends PlanPoint {
  readonly level: number
}

/** Stairs or a ladder: upright, entered and left at every level from the lowest to the highest. */
export interface StairsColumn extends PlanPoint {
  readonly lowestLevel: number
  readonly highestLevel: number
}

/**
 * The straight line between two places, as if on one level.
 *
 * @returns metres; the same to the last bit on every machine, which Math.hypot does not promise
 * @example planDistance({ east: 0, north: 0 }, { east: 3, north: 4 }) // → 5
 */
export function planDistance(one: PlanPoint, other: PlanPoint): number {
  return Math.sqrt((one.east - other.east) ** 2 + (one.north - other.north) ** 2)
}

/**
 * Shortest walks from one place to another level, over as many stairs in a row as it takes.
 *
 *     m(s, start level) = |start s|
 *     m(s, next level)  = min over r  m(r, level) + |r s|      s reaches both levels
 *     walk              = min over s  m(s, level of the place) + |s place|
 *
 * No walk climbs past the level it leads to: it would come through that level twice, and the straight line between is
 * shorter. So levels climbed are the difference of the two. It is enough to change stairs where there are places or
 * stairs end: a change in between can be shifted there.
 *
 * @source SRC-753 shortest walks level by level (docs/sources.md)
 * @param levels those of all places, in any order
 * @returns for a start the metres to a place on one of these other levels; Infinity where no stairs lead
 * @example stairPaths([{ east: 3, north: 0, lowestLevel: 0, highestLevel: 1 }], [0, 1])({ east: 0, north: 0, level: 0 })({ east: 3, north: 4, level: 1 }) // → 7
 */
export function stairPaths(
  stairs: readonly StairsColumn[],
  levels: readonly number[],
): (start: LevelPoint) => (place: LevelPoint) => number {
  const ends = stairs.flatMap(({ lowestLevel, highestLevel }) => [lowestLevel, highestLevel])
  const floors = [...new Set([...levels, ...ends])].toSorted((one, other) => one - other)
  const apart = stairs.map((one) => stairs.map((other) => planDistance(one, other)))
  const onFloor = floors.map((level) =>
    [...stairs.keys()].filter((index) => stairs[index]!.lowestLevel <= level && level <= stairs[index]!.highestLevel),
  )

  return (start) => {
    const walked = floors.map(() => new Float64Array(stairs.length).fill(Infinity))
    const climb = (from: number, to: number) => {
      for (const index of onFloor[from]!) {
        if (!onFloor[to]!.includes(index)) continue
        for (const before of onFloor[from]!) {
          const metres = walked[from]![before]! + apart[before]![index]!
          if (metres < walked[to]![index]!) walked[to]![index] = metres
        }
      }
    }
    const startFloor = floors.indexOf(start.level)
    for (const index of onFloor[startFloor] ?? []) walked[startFloor]![index] = planDistance(start, stairs[index]!)
    for (let floor = startFloor; floor + 1 < floors.length; floor++) climb(floor, floor + 1)
    for (let floor = startFloor; floor > 0; floor--) climb(floor, floor - 1)

    return (place) => {
      const floor = floors.indexOf(place.level)
      let least = Infinity
      for (const index of onFloor[floor] ?? []) {
        least = Math.min(least, walked[floor]![index]! + planDistance(stairs[index]!, place))
      }
      return least
    }
  }
}
