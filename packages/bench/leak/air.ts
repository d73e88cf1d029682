import { quantity } from '@glandkeeper/contract/quantity'
import { pressure } from '@glandkeeper/contract/valves'
import { airThroughOpening } from '@glandkeeper/engines/leak/air-orifice'
import { absolute, ratio } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { calculator } from '../calculator.ts'
import { massFlow, share } from '../figures.ts'
import { opening } from './opening.ts'

export const airLoss = calculator({
  name: 'air-loss',
  shelf: 'leak',
  title: 'Compressed air through an opening',
  question: 'How much air is lost?',
  input: z.strictObject({ opening, pressure, coefficient: share('Coefficient of the opening').default(ratio(0.65)) }),
  output: z.object({
    freeAir: quantity({ label: 'Free air', unit: 'm³/h', min: 0, max: 1e12, step: 0.01 }),
    freeAirCubicFeet: quantity({ label: 'Free air', unit: 'cfm', min: 0, max: 1e12, step: 0.01 }),
    mass: massFlow('By weight'),
  }),
  example: { opening: 1, pressure: 7 },
  notes: { coefficient: '0.97 well rounded, 0.65 sharp, 1.00 as the published chart prints' },
  formula: [
    'choked flow of a perfect gas: ratio of specific heats 1.4, R 287.05 J/(kg·K)',
    'free air at 15.6 °C and 1.01325 bar',
  ],
  limits: 'Dry air to the open while the pressure behind is below 0.528 of the pressure before, both absolute.',
  sources: ['SRC-509', 'SRC-510'],
  compute({ opening: diameter, pressure: gauge, coefficient }) {
    return airThroughOpening({ opening: { diameter }, pressure: absolute(gauge), coefficient })
  },
})
