import type { stemEffort } from '@glandkeeper/bench/load/stem-effort'
import type { Effort } from '@glandkeeper/drawings/effort-bars'
import type { z } from 'zod'

type Given = z.output<(typeof stemEffort)['input']>
type Answer = z.output<(typeof stemEffort)['output']>

/** What can be set against something: the pull against one person, thrust and torque against the drive's. */
export function effortsOf(given: Given, answer: Answer): Effort[] {
  const { rimPull, thrust, torque, shareOfThrust, shareOfTorque } = answer
  const { availableThrust, availableTorque, rimPullLimit, shareLimit } = given
  const ofDrive = (what: string, taken: number, has: number, unit: string): Effort => ({
    what,
    taken,
    has,
    hasSays: 'what the drive has',
    allowed: shareLimit < 1 ? shareLimit * has : null,
    unit,
  })
  return [
    ...(rimPull === null
      ? []
      : [{ what: 'Pull at the rim', taken: rimPull, has: rimPullLimit, hasSays: 'one person', allowed: null, unit: 'N' }]),
    ...(shareOfThrust === null || availableThrust === undefined ? [] : [ofDrive('Thrust', thrust, availableThrust, 'N')]),
    ...(shareOfTorque === null || torque === null || availableTorque === undefined
      ? []
      : [ofDrive('Torque', torque, availableTorque, 'N·m')]),
  ]
}
