import { boxBore, stemDiameter } from '@glandkeeper/contract/glands'
import { count } from '@glandkeeper/contract/quantity'
import { jointPositions } from '@glandkeeper/engines/gland/joints'
import { degrees } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { calculator, OPEN_GLAND } from '../calculator.ts'
import { angle, rings, sentences } from '../figures.ts'

export const joints = calculator({
  name: 'joints',
  shelf: 'cut',
  title: 'Joints',
  question: 'Where does each joint go?',
  input: z.strictObject({
    rings,
    stagger: angle('Each joint turned by').default(degrees(90)),
    boxBore: boxBore.optional(),
    stemDiameter: stemDiameter.optional(),
  }),
  output: z.object({
    joints: z
      .array(
        z.object({
          ring: count('Ring', 1, 40),
          angle: angle('From 12, clockwise'),
          clock: z.string().meta({ title: 'O’clock' }),
        }),
      )
      .meta({ title: 'Joints, ring 1 first in' }),
    neighboursApart: angle('Neighbours apart').nullable(),
    says: sentences('Findings'),
  }),
  example: { rings: 5, stagger: 120, boxBore: 45, stemDiameter: 28 },
  notes: { stagger: '90 to 180 by the sources', boxBore: 'for the drawing only', stemDiameter: 'for the drawing only' },
  formula: ['ring k lies at (k − 1) · stagger, less whole turns'],
  limits: 'Seen from the follower, ring 1 first in at 12. It says where joints go, not whether they close.',
  sources: ['SRC-115', 'SRC-116'],
  caution: OPEN_GLAND,
  compute({ rings: wanted, stagger }) {
    const placed = jointPositions({ rings: wanted, stagger })
    if (!placed.ok) return placed
    return {
      ok: true,
      joints: [...placed.joints],
      neighboursApart: placed.neighboursApart,
      says: placed.findings.map(({ detail }) => detail),
    }
  },
})
