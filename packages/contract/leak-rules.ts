import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { LeakGrade, screeningValue } from './events.ts'
import { count, countFromText, quantity } from './quantity.ts'
import { everybody, registerKeepers } from './roles.ts'
import { FigureMark } from './settings.ts'
import { text } from './text.ts'
import { ValveTag } from './valves.ts'

const many = (label: string) => count(label, 0, 1_000_000_000)
const days = (label: string, most = 3660) => count(label, 1, most)
const percent = quantity({ label: 'Percent leaking', unit: '%', min: 0, max: 100, step: 0.001 })

/** Which published correlation turns a screening value into kilograms an hour. */
export const Correlation = z.enum(['SOCMI gas valve', 'SOCMI light liquid valve', 'petroleum industry valve'])
export type Correlation = z.infer<typeof Correlation>

const ruleFields = {
  name: text(80, 1),
  /** A net screening value from here on is a leak. */
  leakFrom: screeningValue,
  firstAttemptDays: days('Days to the first attempt'),
  repairDays: days('Days to the repair'),
  everyDays: days('Days between looks'),
  /** After so many clean looks in a row the next is so many days away. */
  lengthening: z
    .array(z.strictObject({ cleanLooks: count('Clean looks', 1, 100), everyDays: days('Days between looks') }))
    .max(10),
  difficultEveryDays: days('Days between looks, difficult to monitor'),
  /** Of all valves under the rule: at most this percent leaking for so many periods, and looks are so many days apart. */
  byPercent: z
    .array(
      z.strictObject({ atMostPercent: percent, afterPeriods: count('Periods', 1, 100), everyDays: days('Days between looks') }),
    )
    .max(10),
  percentAllowed: percent.nullable(),
  /** Some codes say "more than", some "at least": true where the percentage itself is too much. */
  percentItselfIsAbove: z.boolean(),
  /** Fewer leaking valves than this are never too many. */
  leastValves: count('Least valves', 0, 1000),
  correlation: Correlation,
}
export const LeakRuleInput = z.strictObject(ruleFields)
export type LeakRuleInput = z.infer<typeof LeakRuleInput>

const RuleId = z.uuid()
const revision = count('Revision', 1, 1_000_000)

export const LeakRule = z.object({
  ruleId: RuleId,
  ...ruleFields,
  revision,
  valves: many('Valves'),
  /** Of a set taken over from the examples: the paragraph it follows. The local code decides. */
  exampleOf: z.string().nullable(),
})
export type LeakRule = z.infer<typeof LeakRule>

const ExampleRule = z.object({ key: z.string(), paragraph: z.string(), what: z.string(), mark: FigureMark, rule: LeakRuleInput })
export type ExampleRule = z.infer<typeof ExampleRule>

export const listLeakRules = endpoint({
  method: 'GET',
  path: '/api/leak-rules',
  who: everybody,
  ok: z.object({ rules: z.array(LeakRule), examples: z.array(ExampleRule) }),
  status: 200,
})

export const addLeakRule = endpoint({
  method: 'POST',
  path: '/api/leak-rules',
  who: registerKeepers,
  body: z.strictObject({ rule: LeakRuleInput, exampleOf: text(80).nullable() }),
  ok: LeakRule,
  status: 201,
})

export const changeLeakRule = endpoint({
  method: 'PUT',
  path: '/api/leak-rules/:ruleId',
  who: registerKeepers,
  params: z.strictObject({ ruleId: RuleId }),
  body: z.strictObject({ revision, rule: LeakRuleInput }),
  ok: LeakRule,
  status: 200,
})

/** How a valve is reached with a meter: a rule may ask for it less often, or only when it is safe. */
export const MonitoringKind = z.enum(['ordinary', 'difficult', 'unsafe'])
export type MonitoringKind = z.infer<typeof MonitoringKind>

/** Puts valves under a rule, or takes them out of it. */
export const monitorValves = endpoint({
  method: 'PUT',
  path: '/api/monitoring',
  who: registerKeepers,
  body: z.strictObject({
    tags: z.array(ValveTag).min(1).max(500),
    ruleId: RuleId.nullable(),
    kind: MonitoringKind,
    /** Why it is difficult or unsafe, and the plan for it. */
    note: text(300),
    since: z.iso.date(),
  }),
  ok: z.object({ valves: many('Valves') }),
  status: 200,
})

export const AttemptClock = z.enum(['made', 'made late', 'due', 'overdue'])
export const RepairClock = z.enum(['verified', 'verified late', 'due', 'overdue', 'put off', 'put off, past its day'])
export type RepairClock = z.infer<typeof RepairClock>

/** One leak under a rule, with its clocks: calendar days of the site. */
export const RegulatedLeak = z.object({
  leakId: z.uuid(),
  tag: ValveTag,
  description: z.string(),
  areaCode: AreaCode,
  detectedOn: z.iso.date(),
  worst: LeakGrade.nullable(),
  worstScreening: screeningValue.nullable(),
  firstAttemptOn: z.iso.date().nullable(),
  firstAttemptBy: z.iso.date(),
  attempt: AttemptClock,
  repairedOn: z.iso.date().nullable(),
  repairBy: z.iso.date(),
  repair: RepairClock,
  /** Below nought: so many days over. */
  daysLeft: count('Days left', -1_000_000, 1_000_000),
  deferral: z.object({ reason: z.string(), approvedBy: z.string(), until: z.iso.date().nullable() }).nullable(),
})
export type RegulatedLeak = z.infer<typeof RegulatedLeak>

/** One valve to hold the meter to, in walking order. */
export const MonitoringLook = z.object({
  tag: ValveTag,
  description: z.string(),
  areaCode: AreaCode,
  level: count('Level', -20, 60),
  kind: MonitoringKind,
  note: z.string(),
  lastOn: z.iso.date().nullable(),
  lastNet: screeningValue.nullable(),
  cleanInARow: many('Clean looks in a row'),
  everyDays: days('Days between looks'),
  /** Null: unsafe to monitor, when it is safe. */
  dueOn: z.iso.date().nullable(),
  isOverdue: z.boolean(),
  reason: z.string(),
})
export type MonitoringLook = z.infer<typeof MonitoringLook>

const PercentLeaking = z.object({
  numerator: many('Leaking'),
  denominator: many('Monitored'),
  percent: percent.nullable(),
  lower: percent.nullable(),
  upper: percent.nullable(),
  allowed: percent.nullable(),
  isAbove: z.boolean(),
  excluded: z.array(z.object({ why: z.string(), valves: many('Valves') })),
  /** By quarter, the oldest first. */
  course: z.array(
    z.object({ period: z.string(), numerator: many('Leaking'), denominator: many('Monitored'), percent: percent.nullable() }),
  ),
})
export type PercentLeaking = z.infer<typeof PercentLeaking>

/** All that a rule asks for: clocks, who is due, percent leaking. Unverified leaks, and those verified in the last year. */
export const showRegulated = endpoint({
  method: 'GET',
  path: '/api/leak-rules/:ruleId/state',
  who: everybody,
  params: z.strictObject({ ruleId: RuleId }),
  query: z.strictObject({ lookAhead: countFromText('Days to look ahead', 0, 400).default(31) }),
  ok: z.object({
    rule: LeakRule,
    today: z.iso.date(),
    leaks: z.array(RegulatedLeak),
    looks: z.array(MonitoringLook),
    unsafe: z.array(MonitoringLook),
    percent: PercentLeaking,
  }),
  status: 200,
})
