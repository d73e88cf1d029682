import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { count, quantity } from './quantity.ts'
import { everybody } from './roles.ts'
import { ValveTag } from './valves.ts'

const many = (label: string) => count(label, 0, 1_000_000_000)
const figure = (label: string) => quantity({ label, unit: '', min: 0, max: 1e12, step: 0.001 })
const months = (label: string) => quantity({ label, unit: 'month', min: 0, max: 1e9, step: 0.1 })
const share = (label: string) => quantity({ label, unit: 'ratio', min: 0, max: 1, step: 0.001 })

/** The time a study counts over, back from the day it was made. */
export const StudyPeriod = z.enum(['all', 'two years', 'one year'])
export type StudyPeriod = z.infer<typeof StudyPeriod>

/** Leaks against the time valves were watched, with 95 % limits of the rate. */
const rateFigures = {
  valves: many('Valves'),
  months: months('Valve-months watched'),
  leaks: many('Leaks'),
  rate: figure('Leaks in 1,000 valve-months').nullable(),
  lower: figure('Lower limit').nullable(),
  upper: figure('Upper limit').nullable(),
}
export const LeakRateRow = z.object({
  name: z.string(),
  ...rateFigures,
  nipsPerDryMonth: figure('Nips in a dry month').nullable(),
})
export type LeakRateRow = z.infer<typeof LeakRateRow>

export const RepeatLeaker = z.object({
  tag: ValveTag,
  leaks: many('Leaks'),
  /** Of a valve of this plant watched as long. */
  expected: figure('To be expected'),
  upper: figure('Upper limit'),
  /** Of so many leaks or more, were it a valve like all others. */
  chance: share('Chance'),
})
export type RepeatLeaker = z.infer<typeof RepeatLeaker>

const MeanStep = z.object({
  days: many('Days since records began'),
  atRisk: many('Valves watched so long'),
  mean: figure('Leaks of a valve so far'),
  lower: figure('Lower limit').nullable(),
  upper: figure('Upper limit').nullable(),
})

/** Valves that had one packing and then another: the same valves before and after. */
const PackingChange = z.object({
  from: z.string(),
  to: z.string(),
  valves: z.array(ValveTag),
  before: z.object(rateFigures),
  after: z.object(rateFigures),
})

export const LeakStudy = z.object({
  madeAt: z.iso.datetime(),
  /** Entries there were then; more have come since when the site has more. */
  entries: many('Entries'),
  entriesSince: many('Entries since'),
  valves: many('Valves'),
  period: StudyPeriod,
  overall: LeakRateRow,
  byService: z.array(LeakRateRow),
  byFamily: z.array(LeakRateRow),
  byArea: z.array(LeakRateRow),
  byAge: z.array(LeakRateRow),
  meanCourse: z.array(MeanStep),
  /** Above the upper limit of the mean course, the least likely by chance first: at most two hundred. */
  repeatLeakers: z.array(RepeatLeaker),
  aboveInAll: many('Valves above the limit'),
  /** Leaks first seen within thirty days after an outage, and the share of all watched time that lies there. */
  afterOutages: z.object({
    leaks: many('Leaks'),
    within: many('Within thirty days'),
    share: share('Share').nullable(),
    lower: share('Lower limit').nullable(),
    upper: share('Upper limit').nullable(),
    timeShare: share('Share of time').nullable(),
    outages: z.array(z.object({ outageId: z.uuid(), name: z.string(), endedOn: z.iso.date(), leaks: many('Leaks') })),
  }),
  packingChanges: z.array(PackingChange),
})
export type LeakStudy = z.infer<typeof LeakStudy>

/** The newest study, and how far one is that is being made; the study is null before the first. */
export const showLeakStudy = endpoint({
  method: 'GET',
  path: '/api/leaks/study',
  who: everybody,
  query: z.strictObject({ period: StudyPeriod.default('all') }),
  ok: z.object({ study: LeakStudy.nullable(), share: share('Share done').nullable(), fault: z.string().nullable() }),
  status: 200,
})

/** Reads every entry of the site again, in a thread. */
export const makeLeakStudy = endpoint({
  method: 'POST',
  path: '/api/leaks/study',
  who: everybody,
  ok: z.object({}),
  status: 202,
})

export const cancelLeakStudy = endpoint({
  method: 'DELETE',
  path: '/api/leaks/study',
  who: everybody,
  ok: z.object({ cancelled: z.boolean() }),
  status: 200,
})
