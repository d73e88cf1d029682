import { boxDepth, keepClear, leastEngagement, noseLength } from '@glandkeeper/contract/glands'
import { count } from '@glandkeeper/contract/quantity'
import { advisedRings, ringsForBox, spacerForRings } from '@glandkeeper/engines/gland/box-space'
import { ringSet as setOf } from '@glandkeeper/engines/gland/ring-set'
import { refuse } from '@glandkeeper/engines/outcome'
import { mm, ratio } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { calculator, OPEN_GLAND } from '../calculator.ts'
import { length, rings, section, sentences, share, signedLength } from '../figures.ts'

export const ringSet = calculator({
  name: 'ring-set',
  shelf: 'cut',
  title: 'Rings for the box',
  question: 'How many rings, and where will the follower stand after loading?',
  input: z.strictObject({
    boxDepth,
    section,
    rings: rings.optional(),
    consolidation: share('Pressed together by', 0.9).default(ratio(0.25)),
    noseLength,
    leastEngagement: leastEngagement.default(mm(3.2)),
    keepClear: keepClear.default(mm(3)),
    bottomBush: length('Bottom bush').default(mm(0)),
    lanternRing: length('Lantern ring').default(mm(0)),
    spacer: length('Spacer').default(mm(0)),
  }),
  output: z.object({
    rings: count('Rings', 1, 10_000),
    verdict: z.string().meta({ title: 'Verdict' }),
    reason: z.string().meta({ title: 'Because' }),
    expectedGap: length('Expected gap after loading'),
    expectedReserve: signedLength('Travel left to adjust'),
    looseHeight: length('Height, loose'),
    consolidatedHeight: length('Height, loaded'),
    takeUp: length('Taken up by loading'),
    entryOnLastRing: signedLength('Follower enters on the last ring'),
    entryAfter: signedLength('Follower in the box after loading'),
    spacerForFive: length('Spacer that leaves 5 rings').nullable(),
    says: sentences('Mind'),
  }),
  example: {
    boxDepth: 60,
    section: 8.5,
    consolidation: 0.25,
    noseLength: 22,
    leastEngagement: 3.2,
    keepClear: 3,
    bottomBush: 0,
    lanternRing: 0,
    spacer: 0,
  },
  notes: {
    rings: 'empty: as many as the box takes',
    consolidation: 'common practice, no source: 25 to 35 % fibre, 15 to 25 % PTFE, 10 to 25 % die-formed',
    leastEngagement: 'nose that must stay in the box',
  },
  formula: [
    'height loaded = rings · section · (1 − pressed together by)',
    'expected gap = nose − (depth − bush − lantern ring − spacer − height loaded)',
    'travel left = the least of gap − keep clear and nose − least engagement',
  ],
  limits:
    'Rings seated one by one. Old boxes hold seven and more; present advice is four to six and a rigid spacer for the rest. Thread left on the studs and spring-back are not known here.',
  sources: ['SRC-103', 'SRC-117', 'SRC-118', 'SRC-119'],
  caution: OPEN_GLAND,
  compute({ rings: wanted, ...box }) {
    if (!(box.noseLength < box.boxDepth))
      return refuse(
        'gland/nose-longer-than-box',
        'noseLength',
        `a nose of ${box.noseLength} mm is as long as the box is deep, ${box.boxDepth} mm`,
      )
    const fitting = ringsForBox(box)
    if (!fitting.ok) return fitting
    const set = setOf({ ...box, rings: wanted ?? fitting.rings })
    if (!set.ok) return set
    const five = fitting.rings > 5 ? spacerForRings({ ...box, wantedRings: 5 }) : null
    return {
      ...set,
      rings: wanted ?? fitting.rings,
      verdict:
        set.verdict === 'one more ring' && (wanted ?? fitting.rings) >= advisedRings.least
          ? 'room for another ring, or a spacer'
          : set.verdict,
      spacerForFive: five?.ok ? five.spacer : null,
      says: [
        ...(fitting.advice === 'more than advised'
          ? [`the box takes ${fitting.rings} rings, more than the four to six now advised: a spacer fills the rest`]
          : []),
        ...set.findings.map((finding) => findingInWords[finding]),
      ],
    }
  },
})

const findingInWords = {
  'ring-set/no-reserve': 'when this set is loaded the follower has no travel left',
  'ring-set/nose-does-not-reach': 'the nose ends before it meets the packing: the flange would meet the box first',
} as const
