import { stemDiameter } from '@glandkeeper/contract/glands'
import { quantity } from '@glandkeeper/contract/quantity'
import { heliumStemLimit } from '@glandkeeper/engines/leak/helium-class'
import { z } from 'zod'
import { calculator } from '../calculator.ts'

export const heliumClass = calculator({
  name: 'helium-class',
  shelf: 'regulated',
  title: 'Helium class of a stem seal',
  question: 'How much helium may this stem pass in the type test?',
  input: z.strictObject({ stemDiameter, heliumClass: z.enum(['AH', 'BH', 'CH']).meta({ title: 'Tightness class' }) }),
  output: z.object({
    limit: quantity({ label: 'At most', unit: 'mbar·L/s', min: 0, max: 1e9, step: 0.000_01 }),
    mark: z.string().meta({ title: 'Mark of the figure' }),
  }),
  example: { stemDiameter: 20, heliumClass: 'BH' },
  formula: ['limit = figure of the class · stem diameter'],
  limits: 'A limit of a test rig, not of a valve in the plant; it says nothing of the fluid that leaks there.',
  sources: ['SRC-516', 'SRC-517'],
  compute: (input) => heliumStemLimit(input),
})
