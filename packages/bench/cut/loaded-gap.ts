import { gap } from '@glandkeeper/contract/reserve'
import { loadingVerdict, LOADING_TOLERANCE } from '@glandkeeper/engines/gland/loading'
import { z } from 'zod'
import { calculator } from '../calculator.ts'
import { length, share, signedLength } from '../figures.ts'

export const loadedGap = calculator({
  name: 'loaded-gap',
  shelf: 'cut',
  title: 'Gap after loading',
  question: 'Loaded and measured: is the set as expected?',
  input: z.strictObject({
    gapLeft: gap.optional(),
    gapRight: gap.optional(),
    expectedGap: length('Expected gap'),
    setHeight: length('Height of the set, loaded'),
    tolerance: share('May be off by', 0.9).default(LOADING_TOLERANCE),
  }),
  output: z.object({
    verdict: z.string().meta({ title: 'Verdict' }),
    reason: z.string().meta({ title: 'Because' }),
    gap: length('Gap, mean of both sides'),
    difference: signedLength('Off by'),
    allowed: length('Allowed'),
    tilt: length('The two sides differ by').nullable(),
  }),
  example: { gapLeft: 11.8, gapRight: 12.1, expectedGap: 12, setHeight: 36, tolerance: 0.05 },
  notes: { tolerance: 'share of the height of the set; set by us' },
  formula: ['off by = mean gap − expected gap', 'allowed = share · height of the set'],
  limits:
    'A short gap means the packing sits low: a ring fewer, or pressed harder than expected. A wide one: rings not seated, or one too many. Which of the two, only the count of rings and the torque tell.',
  sources: ['SRC-117', 'SRC-120'],
  caution:
    'Tilted, or on the box: slacken, level and load again only while the valve is still isolated and proved at zero, a quarter turn at a time. Never draw one side to pull the other down.',
  compute({ gapLeft, gapRight, ...expected }) {
    const judged = loadingVerdict({ ...expected, gapLeft: gapLeft ?? null, gapRight: gapRight ?? null })
    if (!judged.ok) return judged
    const reason =
      judged.tilt === null ? `${judged.reason}; the other side was not read, so whether it tilts is not known` : judged.reason
    return { ...judged, reason }
  },
})
