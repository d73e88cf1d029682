import { stemDiameter } from '@glandkeeper/contract/glands'
import { count } from '@glandkeeper/contract/quantity'
import { cordNeeded, TRIAL_RINGS, WASTE_SHARE } from '@glandkeeper/engines/gland/cord'
import { degrees } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { calculator } from '../calculator.ts'
import { cutAngle, length, rings, section, share } from '../figures.ts'

const Cutting = z.enum(['wound on a bar', 'in a row', 'one by one']).meta({ title: 'Pieces cut' })

export const cord = calculator({
  name: 'cord',
  shelf: 'cut',
  title: 'Cord for a kit',
  question: 'How much cord to draw from the store?',
  input: z.strictObject({
    stemDiameter,
    section,
    rings,
    valves: count('Valves alike', 1, 1000).default(1),
    cutAngle: cutAngle.default(degrees(45)),
    cutting: Cutting.default('wound on a bar'),
    trialRings: count('Trial rings', 0, 20).default(TRIAL_RINGS),
    wasteShare: share('Waste', 0.9).default(WASTE_SHARE),
  }),
  output: z.object({
    needed: length('Cord to draw', 1),
    wholeMetres: count('In whole metres', 0, 1e9),
    perValve: length('For one valve', 1),
    pieces: count('Pieces', 0, 1e9),
    waste: length('Of it waste', 1),
  }),
  example: { stemDiameter: 28, section: 8.5, rings: 5, valves: 6, cutting: 'wound on a bar', trialRings: 1, wasteShare: 0.1 },
  notes: { wasteShare: 'frayed ends and short pieces; set by us', trialRings: 'cut and tried before the set is cut' },
  formula: [
    'wound on a bar: (rings + 1) · length at mid-width, for each valve',
    'in a row: rings · edge length + one lean of the cut, for each valve',
    'needed = (valves + trial rings) · (1 + waste)',
  ],
  limits: 'It knows nothing of the length left on a reel: a reel that ends in mid-ring wastes a piece.',
  sources: ['SRC-102', 'SRC-112', 'SRC-113', 'SRC-114'],
  compute(input) {
    return cordNeeded(input)
  },
})
