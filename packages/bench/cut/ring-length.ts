import { stemDiameter } from '@glandkeeper/contract/glands'
import { ringLength as lengthsOfRing, wrapsOnMandrel } from '@glandkeeper/engines/gland/ring-length'
import { degrees, mm } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { calculator } from '../calculator.ts'
import { cutAngle, length, rings, section, share, signedLength } from '../figures.ts'
import { count } from '@glandkeeper/contract/quantity'

export const ringLength = calculator({
  name: 'ring-length',
  shelf: 'cut',
  title: 'Ring length',
  question: 'How long is each ring, butt or skive?',
  input: z.strictObject({
    stemDiameter,
    section,
    cutAngle: cutAngle.default(degrees(45)),
    allowance: signedLength('Cut longer by').default(mm(0)),
    rings: rings.default(5),
  }),
  output: z.object({
    edgeLength: length('Each ring, along its edge'),
    midLength: length('Round the middle of the section'),
    cutOffset: length('The cut leans by'),
    overallLength: length('From point to point'),
    wholeSectionLength: length('Between the inner corners'),
    wraps: count('Wraps to wind on a bar of stem size', 1, 41),
    innerCircumference: length('Round the stem'),
    outerCircumference: length('Round the bore'),
    bendingStrain: share('Outer side stretched by'),
  }),
  example: { stemDiameter: 28, section: 8.5, cutAngle: 45, allowance: 0, rings: 5 },
  notes: {
    cutAngle: '90 is a butt cut; 45 is usual for stems',
    allowance: 'negative leaves a gap between the ends; the sources disagree, your site decides',
  },
  formula: [
    'length at mid-width = π · (stem + section)',
    'length of each edge = length at mid-width + allowance',
    'the cut leans by section / tan(angle)',
    'from point to point = edge + lean',
  ],
  limits:
    'Both ends are cut the same way, so the piece is a parallelogram and each long edge measures the edge length. Marks on one edge are the edge length apart. Try the first ring in the box before cutting the set; never take an old ring for the pattern.',
  sources: ['SRC-102', 'SRC-110', 'SRC-111', 'SRC-112'],
  compute(input) {
    const lengths = lengthsOfRing(input)
    if (!lengths.ok) return lengths
    const wound = wrapsOnMandrel(input.rings)
    return wound.ok ? { ...lengths, wraps: wound.wraps } : wound
  },
})
