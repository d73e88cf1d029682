import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { count, quantity } from './quantity.ts'
import { everybody, registerKeepers } from './roles.ts'

const share = (label: string) => quantity({ label, unit: 'ratio', min: 0, max: 1, step: 0.01 })

const FitOfGroup = z.object({
  name: z.string(),
  lives: count('Lives', 0, 100_000_000),
  ratePerYear: quantity({ label: 'Wear in a year', unit: 'mm', min: 0, max: 1e6, step: 0.1 }).nullable(),
  /** Two lives in three wear at this many times the rate, or less, and at a fraction as small, or more. */
  spread: quantity({ label: 'Spread between lives', unit: 'ratio', min: 1, max: 1e6, step: 0.01 }).nullable(),
  valves: count('Valves watched', 0, 100_000_000),
  leaks: count('Leaks', 0, 100_000_000),
})

/** What a fit rests on and what it found: stored with its date, so that a forecast can be traced to it. */
const WearFit = z.object({
  fittedAt: z.iso.datetime(),
  cause: z.string(),
  lives: count('Lives', 0, 100_000_000),
  readings: count('Readings', 0, 1_000_000_000),
  readingsLeftOut: count('Readings left out', 0, 1_000_000_000),
  hasConverged: z.boolean(),
  /** Of the last readings of finished lives, the share inside the 80 % band made from the readings before. */
  lastReadingsWithin80: share('Last readings inside their 80 % band').nullable(),
  readingDeviation: quantity({ label: 'Error of a reading', unit: 'mm', min: 0, max: 1000, step: 0.01 }).nullable(),
  bedInFall: quantity({ label: 'Bed-in', unit: 'mm', min: 0, max: 1000, step: 0.1 }).nullable(),
  bedInTime: quantity({ label: 'Bed-in time', unit: 'day', min: 0, max: 100_000, step: 1 }).nullable(),
  groups: z.array(FitOfGroup),
})
export type WearFit = z.infer<typeof WearFit>

const ShownFit = z.object({ fit: WearFit.nullable(), running: share('Share of the running fit that is done').nullable() })

export const showFit = endpoint({ method: 'GET', path: '/api/forecasts/fit', who: everybody, ok: ShownFit, status: 200 })

/** Learns anew from all lives, in the background. */
export const askForFit = endpoint({ method: 'POST', path: '/api/forecasts/fit', who: registerKeepers, ok: ShownFit, status: 202 })
