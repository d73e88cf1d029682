import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { OutageId } from './outages.ts'
import { count } from './quantity.ts'
import { everybody } from './roles.ts'
import { ValveTag } from './valves.ts'

/** At most so many valves are printed at once; the rest is in the next part. */
export const VALVES_IN_A_PART = 40

const part = z
  .string()
  .regex(/^\d{1,4}$/)
  .transform(Number)
  .pipe(count('Part', 1, 9999))
  .default(1)

/** Everything on paper for one valve: isolation to be filled in, hazards, cut card, steps, record. */
export const printJobPack = endpoint({
  method: 'GET',
  path: '/api/valves/:tag/job-pack.pdf',
  who: everybody,
  params: z.strictObject({ tag: ValveTag }),
  /** With `boundary` those of the plan in use that are isolated together with it, too. */
  query: z.strictObject({ with: z.enum(['boundary']).optional() }),
  ok: z.instanceof(Uint8Array),
  okKind: 'pdf',
  status: 200,
})

/** Cover list, kit list, and a pack for each boundary of an outage, in parts. */
export const printOutagePack = endpoint({
  method: 'GET',
  path: '/api/outages/:outageId/job-pack.pdf',
  who: everybody,
  params: z.strictObject({ outageId: OutageId }),
  query: z.strictObject({ part }),
  ok: z.instanceof(Uint8Array),
  okKind: 'pdf',
  status: 200,
})
