import { quantity } from '@glandkeeper/contract/quantity'
import { pressure } from '@glandkeeper/contract/valves'
import { kilogramsPerCubicMetre, money } from '@glandkeeper/engines/leak/leak-quantity'
import { yearlyWaterCost } from '@glandkeeper/engines/leak/yearly-cost'
import { waterThroughOpening } from '@glandkeeper/engines/leak/water-orifice'
import { ratio } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { at } from '../at-input.ts'
import { calculator } from '../calculator.ts'
import { massFlow, share } from '../figures.ts'
import { hoursAYear } from './hours-a-year.ts'
import { opening } from './opening.ts'

export const waterLoss = calculator({
  name: 'water-loss',
  shelf: 'leak',
  title: 'Water through an opening',
  question: 'How much water runs away?',
  input: z.strictObject({
    opening,
    pressure,
    coefficient: share('Coefficient of the opening').default(ratio(0.61)),
    density: quantity({ label: 'Density', unit: 'kg/m³', min: 1, max: 20_000, step: 0.1, usual: [600, 1400] }).default(
      kilogramsPerCubicMetre(998.2),
    ),
    hours: hoursAYear,
    price: quantity({ label: 'Price of a cubic metre', unit: 'money', min: 0, max: 1e6, step: 0.01 }).default(money(2)),
  }),
  output: z.object({
    perDay: quantity({ label: 'Litres a day', unit: 'L/d', min: 0, max: 1e12, step: 0.1 }),
    perHour: quantity({ label: 'Litres an hour', unit: 'L/h', min: 0, max: 1e12, step: 0.01 }),
    mass: massFlow('By weight'),
    perYear: quantity({ label: 'In a year', unit: 'm³/y', min: 0, max: 1e15, step: 0.1 }),
    cost: quantity({ label: 'It costs in a year', unit: 'money', min: 0, max: 1e18, step: 1 }),
  }),
  example: { opening: 1, pressure: 10 },
  notes: {
    price: 'in the money of your site, with treatment and drain',
    coefficient: '0.61 for a sharp edge',
    density: 'cold water 998.2',
  },
  formula: ['flow = coefficient · area · √(2 · pressure / density)', 'cost = volume of a year · price'],
  limits:
    'Cold liquid in full turbulent flow to the open. A long thin path through packing passes less; hot water that flashes passes less too.',
  sources: ['SRC-500', 'SRC-508', 'SRC-520'],
  compute({ opening: diameter, pressure: pressureDrop, coefficient, density, hours, price }) {
    const found = waterThroughOpening({ opening: { diameter }, pressureDrop, coefficient, density })
    if (!found.ok) return at(found, { pressureDrop: 'pressure', diameter: 'opening' })
    const year = yearlyWaterCost({ flow: found.perDay, pricePerCubicMetre: price, hours })
    if (!year.ok) return at(year, { flow: 'opening', pricePerCubicMetre: 'price' })
    return { ok: true, perDay: found.perDay, perHour: found.perHour, mass: found.mass, perYear: year.water, cost: year.cost }
  },
})
