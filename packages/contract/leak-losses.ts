import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { LeakGrade } from './events.ts'
import { count, quantity } from './quantity.ts'
import { everybody } from './roles.ts'
import { FigureMark } from './settings.ts'
import { ValveTag } from './valves.ts'

const many = (label: string) => count(label, 0, 1_000_000_000)
const amount = (label: string, unit: string) => quantity({ label, unit, min: 0, max: 1e15, step: 0.000001 })
const range = (label: string, unit: string) =>
  z.object({ middle: amount(label, unit), low: amount(`${label}, low`, unit), high: amount(`${label}, high`, unit) })

export const LossMethod = z.enum([
  'screening correlation',
  'default zero',
  'pegged factor',
  'drops counted',
  'steam through an opening',
  'water through an opening',
  'air through an opening',
])
export type LossMethod = z.infer<typeof LossMethod>

export const LeakLoss = z.object({
  leakId: z.uuid(),
  tag: ValveTag,
  description: z.string(),
  areaCode: AreaCode,
  service: z.string(),
  grade: LeakGrade.nullable(),
  seenAt: z.iso.datetime(),
  method: LossMethod,
  mark: FigureMark,
  /** Why the figure is to be taken with care, outside the range of its method; null inside it. */
  care: z.string().nullable(),
  kilogramsPerHour: range('Loss', 'kg/h'),
  /** As the site prices it; null where no price or factor is set for it. */
  moneyPerYear: range('Cost', 'money').nullable(),
  carbonPerYear: range('Carbon', 'kg CO2e').nullable(),
})
export type LeakLoss = z.infer<typeof LeakLoss>

const sums = {
  leaks: many('Leaks'),
  kilogramsPerHour: range('Loss', 'kg/h'),
  moneyPerYear: range('Cost', 'money').nullable(),
  carbonPerYear: range('Carbon', 'kg CO2e').nullable(),
}

/** What the leaks lose that stand open now, by the last sighting that gave a figure. */
export const showLeakLosses = endpoint({
  method: 'GET',
  path: '/api/leaks/losses',
  who: everybody,
  ok: z.object({
    losses: z.array(LeakLoss),
    byArea: z.array(z.object({ areaCode: AreaCode, name: z.string(), ...sums })),
    total: z.object(sums),
    /** Open leaks nobody has given a figure for: neither drops, an opening, nor a screening value. */
    withoutFigure: z.array(z.object({ tag: ValveTag, grade: LeakGrade.nullable() })),
    hoursPerYear: quantity({ label: 'Hours under pressure in a year', unit: 'h', min: 0, max: 8784, step: 1 }),
    says: z.array(z.string()),
  }),
  status: 200,
})
