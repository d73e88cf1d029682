import { boxBore, stemDiameter } from '@glandkeeper/contract/glands'
import { wornParts as judgeWornParts } from '@glandkeeper/engines/gland/worn-parts'
import { z } from 'zod'
import { calculator, OPEN_GLAND } from '../calculator.ts'
import { length, sentences, signedLength, space } from '../figures.ts'

export const wornParts = calculator({
  name: 'worn-parts',
  shelf: 'cut',
  title: 'Worn stem and bore',
  question: 'Measured more than once: how uneven, how worn, will packing be pressed out?',
  input: z.strictObject({
    stemDiameters: z.array(stemDiameter).min(1).max(24),
    boreDiameters: z.array(boxBore).min(1).max(24),
    stemAsNew: length('Stem as new', 0.01).optional(),
    boreAsNew: length('Bore as new', 0.01).optional(),
    followerBore: length('Hole in the follower', 0.01).optional(),
    neckBore: length('Hole at the bottom of the box', 0.01).optional(),
  }),
  output: z.object({
    section: space,
    leastSection: length('Narrowest space', 0.01),
    mostSection: length('Widest space', 0.01),
    stemOvality: length('Spread of the stem’s diameters', 0.01).nullable(),
    boreOvality: length('Spread of the bore’s diameters', 0.01).nullable(),
    stemWear: signedLength('Stem worn by', 0.01).nullable(),
    boreWear: signedLength('Bore worn by', 0.01).nullable(),
    clearanceAtFollower: length('Clearance in the follower, radial', 0.01).nullable(),
    clearanceAtNeck: length('Clearance at the bottom, radial', 0.01).nullable(),
    says: sentences('What stands out'),
  }),
  example: {
    stemDiameters: [27.9, 27.6, 27.95],
    boreDiameters: [45, 45.2],
    stemAsNew: 28,
    boreAsNew: 45,
    followerBore: 28.6,
    neckBore: 29,
  },
  notes: { stemDiameters: 'along and around the stem, where the packing sits', boreDiameters: 'at two heights, two ways' },
  formula: ['spread = most − least', 'section = (bore − stem) / 2, of the means', 'clearance = (hole − least stem) / 2'],
  limits:
    'Holds for a stem in the middle; a stem to one side makes it worse. The limits of ovality and clearance are settings of ours.',
  sources: ['SRC-101', 'SRC-108', 'SRC-109'],
  caution: OPEN_GLAND,
  compute({ stemDiameters, boreDiameters, stemAsNew, boreAsNew, followerBore, neckBore }) {
    const judged = judgeWornParts({
      stemDiameters,
      boreDiameters,
      ...(stemAsNew !== undefined && { stemAsNew }),
      ...(boreAsNew !== undefined && { boreAsNew }),
      ...(followerBore !== undefined && { followerBore }),
      ...(neckBore !== undefined && { neckBore }),
    })
    if (!judged.ok) return judged
    const { stem, bore, section, clearanceAtFollower, clearanceAtNeck, warnings } = judged
    return {
      ok: true,
      section: section.mean,
      leastSection: section.least,
      mostSection: section.most,
      stemOvality: stem.ovality,
      boreOvality: bore.ovality,
      stemWear: stem.wear,
      boreWear: bore.wear,
      clearanceAtFollower,
      clearanceAtNeck,
      says: warnings.map(({ detail }) => detail),
    }
  },
})
