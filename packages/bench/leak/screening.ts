import { screeningValue } from '@glandkeeper/contract/events'
import { refuse } from '@glandkeeper/engines/outcome'
import { rateOfScreening } from '@glandkeeper/engines/leak/screening'
import { z } from 'zod'
import { calculator } from '../calculator.ts'
import { massFlow } from '../figures.ts'

const Service = z.enum(['SOCMI gas valve', 'SOCMI light liquid valve', 'petroleum industry valve']).meta({ title: 'Service' })
const Pegged = z.enum(['no', 'at 10 000', 'at 100 000']).meta({ title: 'Meter stopped at its end' })

export const screening = calculator({
  name: 'screening',
  shelf: 'regulated',
  title: 'Screening value to kg/h',
  question: 'What does a meter reading come to by the published correlations?',
  input: z.strictObject({ service: Service, screeningValue, pegged: Pegged.default('no') }),
  output: z.object({
    rate: massFlow('Leaks'),
    by: z.string().meta({ title: 'By' }),
    mark: z.string().meta({ title: 'Mark of the figure' }),
  }),
  example: { service: 'SOCMI gas valve', screeningValue: 500, pegged: 'no' },
  notes: { screeningValue: 'above background' },
  formula: [
    'at background: default zero',
    'between: multiplier · (ppmv above background) ^ exponent',
    'meter at its end: pegged factor',
  ],
  limits:
    'Total organic compound of an average of many valves: one valve may leak ten times more or less. The rules where you are decide which figures count.',
  sources: ['SRC-511', 'SRC-512', 'SRC-513', 'SRC-514', 'SRC-515'],
  compute({ service, screeningValue: value, pegged }) {
    const peggedAt = pegged === 'at 10 000' ? 10_000 : 100_000
    if (pegged !== 'no' && value < peggedAt)
      return refuse('leak/not-pegged', 'pegged', `a meter that shows ${value} ppmv has not stopped at its end of ${peggedAt}`)
    return rateOfScreening({ service, screening: pegged === 'no' ? { screeningValue: value } : { peggedAt } })
  },
})
