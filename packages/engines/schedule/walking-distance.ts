import { constructorOf, type Quantity } from '@glandkeeper/units/quantity'
import { type InputProblem, type Outcome, refuse } from '../outcome.ts'
import { type LevelPoint, planDistance, type PlanPoint, stairPaths, type StairsColumn } from './stair-paths.ts'

export type Metre = Quantity<'m'>
/** `metres(12)` is 12 metres. Throws RangeError for NaN and the infinities. */
export const metres = constructorOf('m')

/** Where somebody stands: metres from the same point for all, and a whole number for the level. */
export interface WalkingPlace extends LevelPoint {
  readonly east: Metre
  readonly north: Metre
}

/** Stairs or a ladder, from its lowest to its highest level; whole numbers. */
export interface Stairs extends StairsColumn {
  readonly east: Metre
  readonly north: Metre
}

/** What is walked through. */
export interface WalkedArea {
  readonly stops: readonly WalkingPlace[]
  /** Where the walk starts and ends; null: it starts at the first stop and ends at the last. */
  readonly wayIn: WalkingPlace | null
  /** None at all: levels are taken as joined anywhere. */
  readonly stairs: readonly Stairs[]
}

export interface Walk {
  /** On the flat. */
  readonly metres: Metre
  /** Climbed, up or down. */
  readonly levels: number
}

export interface WalksBetween {
  /** Between two stops by their index; the index after the last is the way in, or nowhere, to which nobody walks. */
  readonly between: (from: number, to: number) => Walk
}

const MOST_STOPS = 2_000
const MOST_STAIRS = 100
const FARTHEST_METRES = 1e8
const FARTHEST_LEVEL = 200

/**
 * The shortest walk between every two places of an area, worked out once.
 *
 *     on one level        the straight line
 *     on two levels       to the best stairs, along them, and from there: several in a row where none reaches both
 *     without any stairs  the straight line in plan, and the climb
 *
 * It knows no walls and no pipes in the way. Holds for up to 2,000 stops and 100 stairs, levels from -200 to 200.
 *
 * @source SRC-753 shortest walks level by level · SRC-754 straight lines on a level (docs/sources.md)
 * @returns walks, the same both ways; or `walk/place`, `walk/stairs`, `walk/too-many` or `walk/level-not-reached`
 * @example walksBetween({ stops: [{ east: 0, north: 0, level: 0 }, { east: 3, north: 4, level: 2 }], wayIn: null, stairs: [{ east: 3, north: 0, lowestLevel: 0, highestLevel: 2 }] }).between(0, 1) // → { metres: 7, levels: 2 }
 */
export function walksBetween(area: WalkedArea): Outcome<WalksBetween> {
  const problem = firstProblem(area)
  if (problem !== null) return problem
  const { stops, wayIn, stairs } = area
  const places: readonly LevelPoint[] = wayIn === null ? stops : [...stops, wayIn]
  const levels = places.map(({ level }) => level)
  const pathsFrom = stairs.length > 0 && new Set(levels).size > 1 ? stairPaths(stairs, levels) : null
  const count = stops.length + 1
  const table = new Float64Array(count * count)
  for (const [from, start] of places.entries()) {
    const pathTo = pathsFrom?.(start)
    for (let to = from + 1; to < places.length; to++) {
      const end = places[to]!
      const walked = pathTo === undefined || start.level === end.level ? planDistance(start, end) : pathTo(end)
      if (walked === Infinity)
        return refuse('walk/level-not-reached', 'stairs', `no stairs lead from level ${start.level} to level ${end.level}`)
      table[from * count + to] = walked
      table[to * count + from] = walked
    }
  }
  const between = (from: number, to: number): Walk => {
    const [start, end] = [places[from], places[to]]
    const climbed = start === undefined || end === undefined ? 0 : Math.abs(start.level - end.level)
    return { metres: metres(table[from * count + to]!), levels: climbed }
  }
  return { ok: true, between }
}

type Refusal = { readonly ok: false; readonly problem: InputProblem }

function firstProblem({ stops, wayIn, stairs }: WalkedArea): Refusal | null {
  if (stops.length > MOST_STOPS)
    return refuse('walk/too-many', 'stops', `a walk has at most ${MOST_STOPS} stops, not ${stops.length}`)
  if (stairs.length > MOST_STAIRS)
    return refuse('walk/too-many', 'stairs', `an area has at most ${MOST_STAIRS} stairs, not ${stairs.length}`)
  const strayStop = stops.findIndex((stop) => !(isOnPlan(stop) && isLevel(stop.level)))
  if (strayStop !== -1) return refuse('walk/place', 'stops', `the place of stop ${strayStop + 1} cannot be walked to`)
  if (wayIn !== null && !(isOnPlan(wayIn) && isLevel(wayIn.level)))
    return refuse('walk/place', 'wayIn', 'the place of the way in cannot be walked to')
  const strayStairs = stairs.findIndex((each) => !(isOnPlan(each) && joinsLevels(each)))
  if (strayStairs !== -1)
    return refuse('walk/stairs', 'stairs', `stairs ${strayStairs + 1} have no place, or do not lead from a level to a higher one`)
  return null
}

function isOnPlan({ east, north }: PlanPoint): boolean {
  return Math.abs(east) <= FARTHEST_METRES && Math.abs(north) <= FARTHEST_METRES
}

function isLevel(level: number): boolean {
  return Number.isInteger(level) && Math.abs(level) <= FARTHEST_LEVEL
}

function joinsLevels({ lowestLevel, highestLevel }: StairsColumn): boolean {
  return isLevel(lowestLevel) && isLevel(highestLevel) && lowestLevel < highestLevel
}
