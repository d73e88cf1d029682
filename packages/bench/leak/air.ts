import { quantity } from '@glandkeeper/contract/quantity'
import { pressure } from '@glandkeeper/contract/valves'
import { money } from '@glandkeeper/engines/leak/leak-quantity'
import { yearlyAirCost } from '@glandkeeper/engines/leak/yearly-cost'
import { airThroughOpening } from '@glandkeeper/engines/leak/air-orifice'
import { absolute, ratio } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { at } from '../at-input.ts'
import { calculator } from '../calculator.ts'
import { massFlow, share } from '../figures.ts'
import { hoursAYear } from './hours-a-year.ts'
import { opening } from './opening.ts'

export const airLoss = calculator({
  name: 'air-loss',
  shelf: 'leak',
  title: 'Compressed air through an opening',
  question: 'How much air is lost?',
  input: z.strictObject({
    opening,
    pressure,
    coefficient: share('Coefficient of the opening').default(ratio(0.65)),
    hours: hoursAYear,
    price: quantity({ label: 'Price of 1 000 m³ of free air', unit: 'money', min: 0, max: 1e6, step: 0.01 }).default(money(20)),
  }),
  output: z.object({
    freeAir: quantity({ label: 'Free air', unit: 'm³/h', min: 0, max: 1e12, step: 0.01 }),
    freeAirCubicFeet: quantity({ label: 'Free air', unit: 'cfm', min: 0, max: 1e12, step: 0.01 }),
    mass: massFlow('By weight'),
    perYear: quantity({ label: 'Free air in a year', unit: 'm³/y', min: 0, max: 1e15, step: 1 }),
    cost: quantity({ label: 'It costs in a year', unit: 'money', min: 0, max: 1e18, step: 1 }),
  }),
  example: { opening: 1, pressure: 7 },
  notes: { coefficient: '0.97 well rounded, 0.65 sharp, 1.00 as the published chart prints' },
  formula: [
    'choked flow of a perfect gas: ratio of specific heats 1.4, R 287.05 J/(kg·K)',
    'free air at 15.6 °C and 1.01325 bar',
    'cost = free air of a year / 1 000 · price',
  ],
  limits: 'Dry air to the open while the pressure behind is below 0.528 of the pressure before, both absolute.',
  sources: ['SRC-509', 'SRC-510', 'SRC-520'],
  compute({ opening: diameter, pressure: gauge, coefficient, hours, price }) {
    const found = airThroughOpening({ opening: { diameter }, pressure: absolute(gauge), coefficient })
    if (!found.ok) return at(found, { diameter: 'opening' })
    const year = yearlyAirCost({ freeAir: found.freeAir, pricePerThousandCubicMetres: price, hours })
    if (!year.ok) return at(year, { freeAir: 'opening', pricePerThousandCubicMetres: 'price' })
    const { freeAir, freeAirCubicFeet, mass } = found
    return { ok: true, freeAir, freeAirCubicFeet, mass, perYear: year.air, cost: year.cost }
  },
})
