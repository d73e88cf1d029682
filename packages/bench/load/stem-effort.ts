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
    torque: torque('Torque at the wheel or drive').nullable(),
    rimPull: force('Pull at the rim, both hands together').nullable(),
    shareOfThrust: share('Share of the thrust the drive has', 1e9).nullable(),
    shareOfTorque: share('Share of the torque the drive has', 1e9).nullable(),
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
    'Packing alone: seat, fluid pressure on the stem, guides and the face of the stem nut are not in it. The stress is taken as equal over the whole set, which gives the most.',
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
    // Without its screw a rising stem has a thrust and no torque anybody could know.
    const torqueKnown = input.motion === 'turning' || screw !== null
    const pull =
      input.wheelDiameter === undefined || !torqueKnown
        ? null
        : rimPull({ torque: effort.torque, wheelDiameter: input.wheelDiameter, rimPullLimit: input.rimPullLimit })
    if (pull && !pull.ok) return at(pull, { torque: 'wheelDiameter' })
    const ofThrust =
      input.availableThrust === undefined || input.motion === 'turning'
        ? null
        : packingShare({ packingEffort: effort.thrust, availableEffort: input.availableThrust, shareLimit: input.shareLimit })
    if (ofThrust && !ofThrust.ok) return at(ofThrust, { availableEffort: 'availableThrust', packingEffort: 'availableThrust' })
    const ofTorque =
      input.availableTorque === undefined || !torqueKnown
        ? null
        : packingShare({ packingEffort: effort.torque, availableEffort: input.availableTorque, shareLimit: input.shareLimit })
    if (ofTorque && !ofTorque.ok) return at(ofTorque, { availableEffort: 'availableTorque', packingEffort: 'availableTorque' })
    const standings = new Set([ofThrust?.standing, ofTorque?.standing])
    return {
      ok: true,
      friction: held.friction,
      thrust: effort.thrust,
      torque: torqueKnown ? effort.torque : null,
      rimPull: pull?.rimPull ?? null,
      shareOfThrust: ofThrust?.share ?? null,
      shareOfTorque: ofTorque?.share ?? null,
      says: [
        ...(pull?.beyondLimit ? [tooHard] : []),
        ...(standings.has('above limit') ? ['the packing takes more of the drive than it should'] : []),
        ...(standings.has('more than there is')
          ? ['the packing holds harder than the drive can move: the valve would not close']
          : []),
        ...(torqueKnown ? [] : ['without the stem screw the torque is not known: only the thrust is']),
        ...(input.motion === 'turning' && input.availableThrust !== undefined
          ? ['a stem that only turns needs no thrust: give the torque the drive has']
          : []),
      ],
    }
  },
})

const tooHard =
  'more than one person should pull: say so before the valve is used. Nuts are slackened only with the valve isolated, drained, vented and proved at zero'
