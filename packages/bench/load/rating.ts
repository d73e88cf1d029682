import { quantity } from '@glandkeeper/contract/quantity'
import { pressure, temperature } from '@glandkeeper/contract/valves'
import { ratingWarning } from '@glandkeeper/engines/rating/group-1-1'
import { bar } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { calculator } from '../calculator.ts'
import { sentences, share } from '../figures.ts'

const classes = ['150', '300', '600', '900', '1500'] as const
const classNumbers = { '150': 150, '300': 300, '600': 600, '900': 900, '1500': 1500 } as const

export const rating = calculator({
  name: 'rating',
  shelf: 'load',
  title: 'Pressure and temperature',
  question: 'Is this near what carbon steel of a class is rated for?',
  input: z.strictObject({ pressureClass: z.enum(classes).meta({ title: 'Class' }), temperature, pressure }),
  output: z.object({
    allowedPressure: quantity({ label: 'The table gives', unit: 'bar', min: 0, max: 1000, step: 0.1 }),
    share: share('Share of it', 1e9),
    says: sentences('Warning'),
  }),
  example: { pressureClass: '300', temperature: 225, pressure: 15 },
  formula: ['a straight line between the rows below and above'],
  limits:
    'Group 1.1 (WCB castings, A105 forgings), flanged ends. A warning and never an approval: the valve plate, the design code and qualified persons decide.',
  sources: ['SRC-570', 'SRC-571', 'SRC-572'],
  compute(input) {
    const judged = ratingWarning({ ...input, pressureClass: classNumbers[input.pressureClass] })
    if (!judged.ok) return judged
    return {
      ok: true, // Never more than the table gives, as the sentence has it.
      allowedPressure: bar(Math.floor(judged.allowedPressure * 10 + 1e-9) / 10),
      share: judged.share,
      says: [judged.warning, ...judged.cautions],
    }
  },
})
