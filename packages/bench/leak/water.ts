import { quantity } from '@glandkeeper/contract/quantity'
import { pressure } from '@glandkeeper/contract/valves'
import { kilogramsPerCubicMetre } from '@glandkeeper/engines/leak/leak-quantity'
import { waterThroughOpening } from '@glandkeeper/engines/leak/water-orifice'
import { ratio } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { calculator } from '../calculator.ts'
import { massFlow, share } from '../figures.ts'
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
  }),
  output: z.object({
    perDay: quantity({ label: 'Litres a day', unit: 'L/d', min: 0, max: 1e12, step: 0.1 }),
    perHour: quantity({ label: 'Litres an hour', unit: 'L/h', min: 0, max: 1e12, step: 0.01 }),
    mass: massFlow('By weight'),
  }),
  example: { opening: 1, pressure: 10 },
  notes: { coefficient: '0.61 for a sharp edge', density: 'cold water 998.2' },
  formula: ['flow = coefficient · area · √(2 · pressure / density)'],
  limits:
    'Cold liquid in full turbulent flow to the open. A long thin path through packing passes less; hot water that flashes passes less too.',
  sources: ['SRC-500', 'SRC-508'],
  compute({ opening: diameter, pressure: pressureDrop, coefficient, density }) {
    const found = waterThroughOpening({ opening: { diameter }, pressureDrop, coefficient, density })
    return found.ok || found.problem.field !== 'pressureDrop'
      ? found
      : { ok: false, problem: { ...found.problem, field: 'pressure' } }
  },
})
