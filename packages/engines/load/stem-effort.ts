import {
  type Degree,
  type Millimetre,
  type Newton,
  type NewtonMetre,
  newtonMetres,
  newtons,
  type Ratio,
} from '@glandkeeper/units/quantity'
import { firstNotPositive, type Outcome, refuse } from '../outcome.ts'
import { firstNegative, firstOutOfRange } from './in-range.ts'

/** How the stem moves through its packing. `turning`: quarter turn, or a stem that only turns. */
export type StemMotion = 'turning' | 'rising' | 'rising and turning'

/** The thread that moves a rising stem. Half angle of its flanks: 14.5° Acme, 15° trapezoidal, 0° square. */
export interface StemScrew {
  readonly meanDiameter: Millimetre
  /** Travel in one turn of the wheel: pitch times starts. */
  readonly lead: Millimetre
  readonly flankHalfAngle: Degree
  readonly threadFriction: Ratio
  /** The face the turning nut bears on; null where a ball bearing takes the thrust. */
  readonly collar: { readonly meanDiameter: Millimetre; readonly friction: Ratio } | null
}

const MILLIMETRES_PER_METRE = 1000

/**
 * Torque that drives a thrust through a screw, against the thrust.
 *
 *     torque = thrust · mean diameter / 2 · (tan λ + μ / cos α) / (1 - μ tan λ / cos α) + thrust · μ collar · collar diameter / 2
 *     tan λ = lead / (π · mean diameter);  α: half angle of the flanks
 *
 * @source SRC-416 power screw (docs/sources.md)
 * @returns N·m; `stem/thread-jams` where no torque would turn it; or a named problem
 * @example screwTorque(newtons(1000), { meanDiameter: mm(20), lead: mm(20 * Math.PI * 0.1), flankHalfAngle: degrees(0), threadFriction: ratio(0), collar: null }).torque // → 1
 */
export function screwTorque(thrust: Newton, screw: StemScrew): Outcome<{ readonly torque: NewtonMetre }> {
  const { meanDiameter, lead, flankHalfAngle, threadFriction, collar } = screw
  const wrong = firstNegative({ thrust, threadFriction }) ?? firstNotPositive({ meanDiameter, lead })
  if (wrong) return wrong
  if (!(flankHalfAngle >= 0 && flankHalfAngle < 90)) {
    const detail = `the half angle of the flanks must be from 0° to below 90°, not ${flankHalfAngle}`
    return refuse('stem/flank-angle', 'flankHalfAngle', detail)
  }
  const badCollar =
    collar && (firstNotPositive({ meanDiameter: collar.meanDiameter }) ?? firstNegative({ friction: collar.friction }))
  if (badCollar) return refuse(badCollar.problem.code, 'collar', badCollar.problem.detail)

  const slope = lead / (Math.PI * meanDiameter)
  const tooSteep = firstOutOfRange('lead', slope)
  if (tooSteep) return tooSteep
  const friction = threadFriction / Math.cos((flankHalfAngle * Math.PI) / 180)
  const grip = 1 - friction * slope
  if (!(grip > 0)) return refuse('stem/thread-jams', 'threadFriction', 'with so steep and rough a thread no torque would turn it')
  const atThread = ((thrust * meanDiameter) / 2) * ((slope + friction) / grip)
  const atCollar = collar ? (thrust * collar.friction * collar.meanDiameter) / 2 : 0
  const torque = (atThread + atCollar) / MILLIMETRES_PER_METRE
  return firstOutOfRange('thrust', torque) ?? { ok: true, torque: newtonMetres(torque) }
}

/**
 * What packing friction asks of the thrust and torque of a drive.
 *
 *     turning               torque = friction · stem / 2
 *     rising                thrust = friction, torque through the screw; without a screw the drive pushes
 *     rising and turning    friction lies along the helix: its rising part goes through the screw,
 *                           its turning part acts at half the stem diameter
 *
 * Packing alone: not the seat, the pressure on the stem, or the weight.
 *
 * @source SRC-416 power screw · SRC-417 friction split along the helix (docs/sources.md)
 * @returns thrust in N and torque in N·m, or a named problem
 * @example stemEffort({ motion: 'turning', stemDiameter: mm(20), friction: newtons(1000), screw: null }) // → { ok: true, thrust: 0, torque: 10 }
 */
export function stemEffort(input: {
  readonly motion: StemMotion
  readonly stemDiameter: Millimetre
  readonly friction: Newton
  readonly screw: StemScrew | null
}): Outcome<{ readonly thrust: Newton; readonly torque: NewtonMetre }> {
  const { motion, stemDiameter, friction, screw } = input
  const wrong = firstNotPositive({ stemDiameter }) ?? firstNegative({ friction })
  if (wrong) return wrong
  if (motion === 'rising' && screw === null) return { ok: true, thrust: friction, torque: newtonMetres(0) }
  if (motion === 'turning') return turned(friction, stemDiameter, newtons(0), 0)
  if (screw === null) return refuse('stem/screw-missing', 'screw', 'a stem that rises and turns needs its thread')
  const badLead = firstNotPositive({ lead: screw.lead })
  if (badLead) return badLead
  const [along, around] = motion === 'rising' ? [1, 0] : helixShares(screw.lead, stemDiameter)
  const thrust = newtons(friction * along)
  const driven = screwTorque(thrust, screw)
  return driven.ok ? turned(newtons(friction * around), stemDiameter, thrust, driven.torque) : driven
}

/** Parts of a force along the helix that a point on the stem describes: along the axis and around it. */
function helixShares(lead: Millimetre, stemDiameter: Millimetre): [along: number, around: number] {
  const angle = Math.atan2(lead, Math.PI * stemDiameter)
  return [Math.sin(angle), Math.cos(angle)]
}

function turned(around: Newton, stemDiameter: Millimetre, thrust: Newton, throughScrew: number) {
  const torque = ((around / 2) * stemDiameter) / MILLIMETRES_PER_METRE + throughScrew
  return firstOutOfRange('friction', torque) ?? { ok: true as const, thrust, torque: newtonMetres(torque) }
}
