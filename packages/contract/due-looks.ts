import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { count } from './quantity.ts'
import { Standing } from './reserve.ts'
import { everybody } from './roles.ts'
import { VisitCause } from './round-plans.ts'
import { WeekOf } from './weeks.ts'
import { ValveTag } from './valves.ts'

const many = (label: string) => count(label, 0, 10_000_000)

/** A valve whose next look is past its day. */
export const OverdueLook = z.object({
  tag: ValveTag,
  description: z.string(),
  areaCode: AreaCode,
  standing: Standing,
  /** Null where nobody has ever seen it. */
  dueOn: z.iso.date().nullable(),
  daysOver: many('Days over').nullable(),
  cause: VisitCause,
})
export type OverdueLook = z.infer<typeof OverdueLook>

/** What is due and not done, how rounds were walked over the last half year, and what they found. */
export const showDueLooks = endpoint({
  method: 'GET',
  path: '/api/due-looks',
  who: everybody,
  ok: z.object({
    overdueCount: many('Overdue'),
    /** The worst standing first, then the longest overdue. */
    overdue: z.array(OverdueLook),
    areas: z.array(
      z.object({
        areaCode: AreaCode,
        areaName: z.string(),
        valves: many('Valves'),
        overdue: z.object({ spent: many('Spent'), book: many('Book'), watch: many('Watch'), ample: many('Ample') }),
        /** Looks made in the last half year, and those that found a leak, or a stem that moves badly. */
        looks: many('Looks'),
        found: many('Found'),
      }),
    ),
    weeks: z.array(
      z.object({
        weekOf: WeekOf,
        stops: many('Stops'),
        inTime: many('Visited in their week'),
        later: many('Visited later'),
        missed: many('Could not be done'),
      }),
    ),
  }),
  status: 200,
})
