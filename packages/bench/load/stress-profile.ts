import { boxBore, stemDiameter } from '@glandkeeper/contract/glands'
import { count } from '@glandkeeper/contract/quantity'
import { pressure } from '@glandkeeper/contract/valves'
import { bottomRingHolds, stressProfile as profileOf, usualBottomFactor } from '@glandkeeper/engines/load/stress-profile'
import { stemFrictionWithDecay } from '@glandkeeper/engines/load/stem-friction'
import { mm, ratio } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { at } from '../at-input.ts'
import { calculator, OPEN_GLAND } from '../calculator.ts'
import { force, length, rings, sentences, share, stress } from '../figures.ts'

export const stressProfile = calculator({
  name: 'stress-profile',
  shelf: 'load',
  title: 'Stress down the set',
  question: 'What is left of the load at the bottom ring, and how hard is the stem held?',
  input: z.strictObject({
    boxBore,
    stemDiameter,
    packingStress: stress('Stress under the follower'),
    rings,
    ringHeight: length('Height of one ring').optional(),
    friction: share('Friction').default(ratio(0.1)),
    lateralRatio: share('Radial over axial stress').default(ratio(0.5)),
    pressure: pressure.optional(),
  }),
  output: z.object({
    stresses: z
      .array(z.object({ under: count('Under ring', 0, 40), stress: stress('Stress') }))
      .meta({ title: 'From the follower down' }),
    bottomStress: stress('Left under the bottom ring'),
    shareLeft: share('Share left'),
    stemFriction: force('Friction on the stem'),
    radialAtBottom: stress('The bottom ring presses on the stem with').nullable(),
    says: sentences('Mind'),
  }),
  example: { boxBore: 45, stemDiameter: 28, packingStress: 25, rings: 6, friction: 0.1, lateralRatio: 0.5, pressure: 12 },
  notes: {
    ringHeight: 'empty: as high as the section',
    friction: 'from memory: 0.05 to 0.15 graphite and PTFE, 0.15 to 0.25 fibre',
    lateralRatio: '0.5 is usual',
  },
  formula: [
    'stress at depth z = stress · e^(−β z)',
    'β = 4 (μ K bore + μ K stem) / (bore² − stem²)',
    'stem friction = the integral of π · stem · μ · K · stress',
  ],
  limits:
    'The shape is published, the closed form is from memory. One friction for bore and stem, every ring alike, loaded all at once from above: rings pressed home one by one keep more at the bottom.',
  sources: ['SRC-412', 'SRC-413', 'SRC-414', 'SRC-415'],
  caution: OPEN_GLAND,
  compute({
    boxBore: bore,
    stemDiameter: stem,
    packingStress,
    rings: ringCount,
    ringHeight,
    friction,
    lateralRatio,
    pressure: systemPressure,
  }) {
    const height = ringHeight ?? mm(Math.max((bore - stem) / 2, 0.1))
    const walls = {
      boxBore: bore,
      stemDiameter: stem,
      boreFriction: friction,
      boreLateralRatio: lateralRatio,
      stemFriction: friction,
      stemLateralRatio: lateralRatio,
    }
    const names = { ringHeights: 'ringHeight', boreFriction: 'friction', setHeight: 'ringHeight' }
    const profile = profileOf({ ...walls, packingStress, ringHeights: Array.from({ length: ringCount }, () => height) })
    if (!profile.ok) return at(profile, names)
    const held = stemFrictionWithDecay({ ...walls, packingStress, setHeight: mm(height * ringCount) })
    if (!held.ok) return at(held, names)
    const bottom =
      systemPressure === undefined
        ? null
        : bottomRingHolds({
            bottomStress: profile.bottomStress,
            stemLateralRatio: lateralRatio,
            systemPressure,
            pressureFactor: usualBottomFactor,
          })
    if (bottom && !bottom.ok) return at(bottom, { systemPressure: 'pressure' })
    return {
      ok: true,
      stresses: profile.axialStresses.map((axial, under) => ({ under, stress: axial })),
      bottomStress: profile.bottomStress,
      shareLeft: profile.shareLeft,
      stemFriction: held.friction,
      radialAtBottom: bottom?.radialStress ?? null,
      says:
        bottom && !bottom.holds
          ? [
              'the bottom ring presses on the stem with less than the pressure under it: fewer rings, or press each one home by itself',
            ]
          : [],
    }
  },
})
