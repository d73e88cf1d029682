import { leastEngagement } from '@glandkeeper/contract/glands'
import { count, quantity } from '@glandkeeper/contract/quantity'
import { reserve } from '@glandkeeper/contract/reserve'
import { topUpAdvice, topUpLimits } from '@glandkeeper/engines/gland/top-up'
import { mm } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { calculator } from '../calculator.ts'
import { length, section, sentences } from '../figures.ts'

const age = (label: string) => quantity({ label, unit: 'day', min: 0, max: 36_500, step: 1 })

export const topUp = calculator({
  name: 'top-up',
  shelf: 'cut',
  title: 'Top-up ring or repack',
  question: 'Adjust, add one ring, or repack in full?',
  input: z.strictObject({
    reserve,
    followerEntry: length('Nose in the box now'),
    section,
    leastEngagement: leastEngagement.default(mm(3.2)),
    ageOfPacking: age('Age of the packing'),
    usualLife: age('Usual life of this packing').optional(),
    topUpRings: count('Rings added since the repack', 0, 20).default(0),
    dieFormed: z.boolean().meta({ title: 'Die-formed rings' }).default(false),
    leakPersists: z.boolean().meta({ title: 'The leak came back after taking up' }).default(false),
    reserveLimit: length('Nothing left to adjust at').default(topUpLimits.reserve),
  }),
  output: z.object({
    advice: z.string().meta({ title: 'Advice' }),
    reasons: sentences('Because'),
    cautions: sentences('Before hands go on it'),
  }),
  example: {
    reserve: 1.2,
    followerEntry: 17,
    section: 8,
    leastEngagement: 3.2,
    ageOfPacking: 400,
    usualLife: 1100,
    topUpRings: 0,
    dieFormed: false,
    leakPersists: false,
  },
  notes: { reserveLimit: 'set by us', usualLife: 'empty where not known' },
  formula: [
    'adjust: travel is left and taking up stops the leak',
    'repack: the leak persists with travel left, or die-formed, or topped up before, or old, or no room for the follower',
    'top up: otherwise',
  ],
  limits: 'A recommendation with its reasons. It knows nothing of the state of stem and box.',
  sources: ['SRC-103', 'SRC-121', 'SRC-122'],
  caution: 'A top-up ring needs the gland open: isolate, lock, drain and vent, prove zero. Site procedure and permit decide.',
  compute({ reserveLimit, usualLife, ...gland }) {
    const judged = topUpAdvice({ ...gland, usualLife: usualLife ?? null, limits: { ...topUpLimits, reserve: reserveLimit } })
    if (!judged.ok) return judged
    return {
      ok: true,
      advice: judged.advice,
      reasons: judged.reasons.map(({ detail }) => detail),
      cautions: judged.cautions.map(({ detail }) => detail),
    }
  },
})
