import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { count, quantity } from './quantity.ts'
import { everybody } from './roles.ts'
import { text } from './text.ts'
import { ValveTag } from './valves.ts'

const many = (label: string) => count(label, 0, 1_000_000_000)
const months = (label: string) => quantity({ label, unit: 'month', min: 0, max: 1e6, step: 0.1 })
const share = (label: string) => quantity({ label, unit: 'ratio', min: 0, max: 1, step: 0.001 })
const figure = (label: string) => quantity({ label, unit: '', min: 0, max: 1e12, step: 0.0001 })

/** By what goes through: packings meant for heat are compared where it is hot. */
export const HeatBand = z.enum(['any', 'below 100 °C', '100 to 250 °C', 'above 250 °C'])
export type HeatBand = z.infer<typeof HeatBand>

const Limited = z.object({ value: figure('Value'), lower: figure('Lower limit'), upper: figure('Upper limit') })

export const ComparedPacking = z.object({
  family: z.string(),
  lives: many('Packing lives'),
  wornOut: many('Worn out'),
  renewedEarly: many('Renewed early'),
  stillIn: many('Still in the box'),
  /** Fewer than five have worn out: no figure of it says much. */
  isTooFew: z.boolean(),
  steps: z.array(
    z.object({
      months: months('Months'),
      survival: share('Still going'),
      lower: share('Lower limit').nullable(),
      upper: share('Upper limit').nullable(),
    }),
  ),
  atRisk: z.array(z.object({ months: months('Months'), lives: many('Lives watched so long') })),
  median: months('Median').nullable(),
  medianLower: months('Lower limit').nullable(),
  medianUpper: months('Upper limit').nullable(),
  /** Scale in months, and shape: above 1 it wears, below 1 it fails young. */
  weibull: z.object({ scale: Limited, shape: Limited }).nullable(),
  weibullMissing: z.string().nullable(),
  valves: z.array(ValveTag).max(50),
})
export type ComparedPacking = z.infer<typeof ComparedPacking>

/** How long packings last, family by family, in one service or all. */
export const comparePackings = endpoint({
  method: 'GET',
  path: '/api/packing-lives',
  who: everybody,
  query: z.strictObject({ service: text(40).optional(), heat: HeatBand.default('any') }),
  ok: z.object({
    madeAt: z.iso.datetime().nullable(),
    services: z.array(z.string()),
    packings: z.array(ComparedPacking),
    /** Lives whose beginning nobody recorded: left out. */
    leftOut: many('Left out'),
    /** Lives nobody has looked at since the packing was put in: left out. A study of before this was counted has none. */
    notSeenSince: many('Not seen since').default(0),
    logRank: z
      .object({ chiSquared: figure('Chi-squared'), degreesOfFreedom: many('Degrees of freedom'), p: share('p') })
      .nullable(),
    sentence: z.string(),
  }),
  status: 200,
})
