import { dropsPerMinute } from '@glandkeeper/contract/events'
import { quantity } from '@glandkeeper/contract/quantity'
import { dropVolumes, litresOfDrops } from '@glandkeeper/engines/leak/drops'
import { millilitres } from '@glandkeeper/units/quantity'
import { z } from 'zod'
import { calculator } from '../calculator.ts'

export const dropVolume = quantity({ label: 'One drop', unit: 'mL', min: 0.001, max: 10, step: 0.01, usual: [0.05, 0.34] })
const perDay = quantity({ label: 'Litres a day', unit: 'L/d', min: 0, max: 1e9, step: 0.01 })

export const drops = calculator({
  name: 'drops',
  shelf: 'leak',
  title: 'Drops',
  question: 'What do counted drops come to?',
  input: z.strictObject({ dropsPerMinute, dropVolume: dropVolume.default(millilitres(0.25)) }),
  output: z.object({
    perDay,
    cubicMetresPerYear: quantity({ label: 'In a year', unit: 'm³/y', min: 0, max: 1e9, step: 0.01 }),
    drop: z.string().meta({ title: 'With a drop of' }),
    byVolume: z
      .array(z.object({ drop: z.string().meta({ title: 'Drop taken' }), volume: dropVolume, perDay }))
      .meta({ title: 'The same count by each published drop' }),
  }),
  example: { dropsPerMinute: 20, dropVolume: 0.25 },
  notes: { dropVolume: 'published figures differ sevenfold: measure yours in a cup' },
  formula: ['litres a day = drops a minute · 1 440 · mL for a drop / 1 000'],
  limits: 'Holds for drops that can be counted. Drops that dry on a hot gland are not seen; a stream is not counted.',
  sources: ['SRC-501', 'SRC-502', 'SRC-503'],
  compute(input) {
    const found = litresOfDrops(input)
    if (!found.ok) return found
    const byVolume = dropVolumes.flatMap(({ name, volume }) => {
      const each = litresOfDrops({ ...input, dropVolume: volume })
      return each.ok ? [{ drop: name, volume, perDay: each.perDay }] : []
    })
    return { ok: true, perDay: found.perDay, cubicMetresPerYear: found.cubicMetresPerYear, drop: found.drop, byVolume }
  },
})
