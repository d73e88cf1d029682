import { type Millimetre, mm, type Turn, turns } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { knownThread } from './known-thread.ts'

/** A hexagon nut turned by one of its flats has made a sixth of a turn. */
const FLATS_PER_TURN = 6

/**
 * Turns of the nut that move the follower so far: the other way round from travel of turns.
 *
 *     turns = travel / pitch      mm, mm
 *
 * Holds while the nut bears on the follower; it knows nothing of a nut that is loose.
 *
 * @source SRC-204 lead of a single-start thread equals its pitch (docs/sources.md)
 * @returns turns, negative to slacken; `thread/unknown` or `number/out-of-range`
 * @example turnsOfTravel('M12', mm(0.875)) // → { ok: true, turns: 0.5, flats: 3 }
 */
export function turnsOfTravel(
  designation: string,
  travel: Millimetre,
): Outcome<{ readonly turns: Turn; /** Sixths of a turn, whole or not. */ readonly flats: number }> {
  const found = knownThread(designation)
  if (!found.ok) return found
  const taken = travel / found.thread.pitch
  if (!Number.isFinite(taken * FLATS_PER_TURN)) return outOfRange('travel', travel)
  return { ok: true, turns: turns(taken), flats: taken * FLATS_PER_TURN }
}

/**
 * How far the follower moves when a hexagon nut is turned by so many of its flats.
 *
 *     travel = flats / 6 · pitch      mm
 *
 * @source SRC-206 a hexagon has six flats (docs/sources.md)
 * @returns millimetres, negative when slackened; `thread/unknown` or `number/out-of-range`
 * @example travelOfFlats('M12', 1).travel // → 0.291666666667
 */
export function travelOfFlats(designation: string, flats: number): Outcome<{ readonly travel: Millimetre }> {
  const found = knownThread(designation)
  if (!found.ok) return found
  const travel = (flats / FLATS_PER_TURN) * found.thread.pitch
  return Number.isFinite(travel) ? { ok: true, travel: mm(travel) } : outOfRange('flats', flats)
}

function outOfRange(field: string, value: number) {
  return refuse('number/out-of-range', field, `${field} ${value} is beyond what can be computed`)
}
