import { stemDiameter } from '@glandkeeper/contract/glands'
import { packingShare, rimPull, usualPackingShareLimit, usualRimPullLimit } from '@glandkeeper/engines/load/drive-limits'
import { stemEffort as effortOf } from '@glandkeeper/engines/load/stem-effort'
import { stemFriction } from '@glandkeeper/engines/load/stem-friction'
import { degrees, mm, ratio } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { at } from '../at-input.ts'
import { calculator } from '../calculator.ts'
import { angle, force, length, sentences, share, stress, torque } from '../figures.ts'

const Motion = z.enum(['rising', 'turning', 'rising and turning']).meta({ title: 'The stem' })

export const stemEffort = calculator({
  name: 'stem-effort',
  shelf: 'load',
  title: 'Stem and wheel effort',
  question: 'How hard does the packing hold the stem, and is there enough to move it?',
  input: z.strictObject({
    motion: Motion,
    stemDiameter,
    setHeight: length('Height of the set'),
    packingStress: stress('Stress on the packing'),
    friction: share('Friction').default(ratio(0.1)),
    lateralRatio: share('Radial over axial stress').default(ratio(0.5)),
    wheelDiameter: length('Wheel across').optional(),
    screwDiameter: length('Stem screw, mean diameter').optional(),
    lead: length('Stem screw, travel in a turn').optional(),
    flankHalfAngle: angle('Stem screw, half angle of its flanks').default(degrees(15)),
    threadFriction: share('Stem screw, friction').default(ratio(0.15)),
    availableThrust: force('Thrust the drive has').optional(),
    availableTorque: torque('Torque the drive has').optional(),
    rimPullLimit: force('One person pulls at most').default(usualRimPullLimit),
    shareLimit: share('Packing may take').default(usualPackingShareLimit),
  }),
  output: z.object({
    friction: force('Friction of the packing'),
    thrust: force('Thrust along the stem'),
    torque: torque('Torque at the wheel or drive'),
    rimPull: force('Pull at the rim, both hands together').nullable(),
    shareOfDrive: share('Share of what the drive has', 1e9).nullable(),
    says: sentences('Mind'),
  }),
  example: {
    motion: 'rising',
    stemDiameter: 28,
    setHeight: 42,
    packingStress: 25,
    wheelDiameter: 300,
    screwDiameter: 24,
    lead: 5,
    availableThrust: 20000,
  },
  notes: {
    lateralRatio: '0.5 is usual',
    rimPullLimit: '360 N is common practice, no source',
    shareLimit: 'set by us: your site decides',
    flankHalfAngle: '14.5 Acme, 15 trapezoidal, 0 square',
    screwDiameter: 'needed for the torque of a rising stem',
  },
  formula: [
    'friction = π · stem · height · stress · μ · (radial over axial)',
    'torque of a turning stem = friction · stem / 2',
    'torque of a screw = thrust · d/2 · (tan λ + μ / cos α) / (1 − μ tan λ / cos α)',
  ],
  limits:
    'Packing alone: seat, fluid pressure on the stem and guides are not in it. The stress is taken as equal over the whole set, which gives the most.',
  sources: ['SRC-414', 'SRC-416', 'SRC-417', 'SRC-418', 'SRC-419', 'SRC-420'],
  caution:
    'No bar on the wheel: it bends stems. A stem that grew stiff after a nip is a finding, and a control valve that grew sluggish an urgent one.',
  compute(input) {
    const held = stemFriction(input)
    if (!held.ok) return held
    const { screwDiameter, lead, flankHalfAngle, threadFriction } = input
    const screw =
      screwDiameter === undefined || lead === undefined
        ? null
        : { meanDiameter: mm(screwDiameter), lead: mm(lead), flankHalfAngle, threadFriction, collar: null }
    const effort = effortOf({ motion: input.motion, stemDiameter: input.stemDiameter, friction: held.friction, screw })
    if (!effort.ok) return at(effort, { screw: 'screwDiameter', meanDiameter: 'screwDiameter' })
    const pull =
      input.wheelDiameter === undefined
        ? null
        : rimPull({ torque: effort.torque, wheelDiameter: input.wheelDiameter, rimPullLimit: input.rimPullLimit })
    if (pull && !pull.ok) return at(pull, { torque: 'wheelDiameter' })
    const taken =
      input.availableThrust !== undefined && effort.thrust > 0
        ? packingShare({ packingEffort: effort.thrust, availableEffort: input.availableThrust, shareLimit: input.shareLimit })
        : input.availableTorque !== undefined
          ? packingShare({ packingEffort: effort.torque, availableEffort: input.availableTorque, shareLimit: input.shareLimit })
          : null
    if (taken && !taken.ok) {
      const drive = input.availableThrust === undefined ? 'availableTorque' : 'availableThrust'
      return at(taken, { availableEffort: drive, packingEffort: drive })
    }
    return {
      ok: true,
      friction: held.friction,
      thrust: effort.thrust,
      torque: effort.torque,
      rimPull: pull?.rimPull ?? null,
      shareOfDrive: taken?.share ?? null,
      says: [
        ...(pull?.beyondLimit ? ['more than one person should pull: loosen, or find why the packing holds so hard'] : []),
        ...(taken?.standing === 'above limit' ? ['the packing takes more of the drive than it should'] : []),
        ...(taken?.standing === 'more than there is'
          ? ['the packing holds harder than the drive can move: the valve would not close']
          : []),
        ...(screw === null && input.motion === 'rising'
          ? ['without the stem screw the torque is not known: only the thrust is']
          : []),
      ],
    }
  },
})
