import { type Day, days, type Ratio } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { logGamma } from '../stats/log-gamma.ts'
import { minimise } from '../stats/nelder-mead.ts'

/** The time between two visits that saw whether the gland was dry, in age since it was last adjusted or repacked. */
export interface VisitSpan {
  readonly from: Day
  readonly to: Day
  /** Leaking at the end of the span. */
  readonly leaked: boolean
}

/** All that a group of like valves shows, as a fit leaves it. Plain numbers: it may be stored as JSON. */
export interface LeakGroup {
  /** Shape and scale of the gamma distribution of leak rates: mean rate is shape / scale, per day^exponent. */
  readonly shape: number
  readonly scale: number
  /** 1: a gland leaks no likelier when it has been dry for long. Above 1: it does. */
  readonly exponent: number
  readonly valves: number
  readonly leaks: number
}

export interface VisitInterval {
  /** From the age given until the next visit. */
  readonly interval: Day
  /** Leaks seen at this valve, and how long it was watched dry, in day^exponent. */
  readonly leaks: number
  readonly exposure: number
  /** The target is met on average over the valves of the group, not by each valve. Say so where the interval is shown. */
  readonly holds: 'on average over like valves'
}

/** What one valve's visits come to once the exponent is given. */
export interface Watched {
  /** Day^exponent without a leak. */
  readonly dry: number
  /** Day^exponent of each span that ended in a leak. */
  readonly leaking: readonly number[]
}

const PASSES = 3
const SHAPE_LEANT_TO = 3
const LARGEST_EXPONENT = 4
const LONGEST_AGE = 36_525

/**
 * Sums up the visits of a valve: dry time, and the spans in which a leak began.
 *
 *     D = to^k - from^k      days^k, ages since the last adjustment
 *
 * @source SRC-580 interval between visits (docs/sources.md)
 * @returns sums in day^exponent, or the visit that is not a span of time
 * @example watched([{ from: days(0), to: days(30), leaked: false }], 1) // → { ok: true, dry: 30, leaking: [] }
 */
export function watched(visits: readonly VisitSpan[], exponent: number): Outcome<Watched> {
  if (!(exponent > 0 && exponent <= LARGEST_EXPONENT))
    return refuse(
      'interval/exponent',
      'exponent',
      `the exponent of age must be above 0 and at most ${LARGEST_EXPONENT}, not ${exponent}`,
    )
  let dry = 0
  const leaking: number[] = []
  for (const { from, to, leaked } of visits) {
    if (!(from >= 0 && to > from && to <= LONGEST_AGE))
      return refuse(
        'interval/no-span',
        'visits',
        `a visit from age ${from} to age ${to} days is no span of time within a hundred years`,
      )
    const span = to ** exponent - from ** exponent
    if (leaked) leaking.push(span)
    else dry += span
  }
  return { ok: true, dry, leaking }
}

/**
 * Exposure of a valve: dry time, and for each leak the mean time from the last dry visit until it began.
 *
 *     E* = dry + Σ (1/rate - D exp(-rate D) / (1 - exp(-rate D)))
 *
 * @source SRC-582 mean time of a leak within the visit that found it (docs/sources.md)
 * @returns day^exponent
 * @example exposureOf({ dry: 30, leaking: [] }, 0.01) // → 30
 */
export function exposureOf({ dry, leaking }: Watched, rate: number): number {
  return leaking.reduce((sum, span) => sum + meanTimeToLeak(span, rate), dry)
}

function meanTimeToLeak(span: number, rate: number): number {
  const expected = rate * span
  // Both terms are huge and nearly equal for a short span: half of it, and the next term of the series.
  if (!(expected > 1e-4)) return span * (0.5 - expected / 12)
  return 1 / rate + (span * Math.exp(-expected)) / Math.expm1(-expected)
}

/**
 * How often glands of a group leak, and how far they differ, from all visits of all valves.
 *
 *     leaks of a valve ~ negative binomial      shape a, scale b, exposure E*
 *     ln L = ln Γ(a + d) - ln Γ(a) + a ln b - (a + d) ln(b + E*)
 *
 * The exposure hangs on the rate and the rate on the exposure: three passes, from the middle of each leaking span.
 * Holds where the leaks of one valve come independently of each other after each adjustment.
 *
 * @source SRC-581 negative binomial likelihood · SRC-584 leaning of the shape (docs/sources.md)
 * @returns shape and scale; a group that was never watched is `interval/nothing-watched`
 * @example fitLeakGroup({ valves: [], exponent: 1 }).ok // → false
 */
export function fitLeakGroup(input: {
  readonly valves: readonly (readonly VisitSpan[])[]
  readonly exponent: number
}): Outcome<LeakGroup> {
  const sums: Watched[] = []
  for (const visits of input.valves) {
    const sum = watched(visits, input.exponent)
    if (!sum.ok) return { ok: false, problem: { ...sum.problem, field: sum.problem.field === 'visits' ? 'valves' : 'exponent' } }
    if (visits.length > 0) sums.push(sum)
  }
  if (sums.length === 0) return refuse('interval/nothing-watched', 'valves', 'no valve of the group has a visit to learn from')
  let seen = sums.map(({ dry, leaking }) => ({
    leaks: leaking.length,
    exposure: dry + leaking.reduce((sum, span) => sum + span / 2, 0),
  }))
  let gamma = gammaOf(seen)
  for (let pass = 0; pass < PASSES; pass++) {
    const rates = seen.map(({ leaks, exposure }) => (gamma.shape + leaks) / (gamma.scale + exposure))
    seen = sums.map((sum, index) => ({ leaks: sum.leaking.length, exposure: exposureOf(sum, rates[index]!) }))
    gamma = gammaOf(seen)
  }
  const leaks = seen.reduce((sum, valve) => sum + valve.leaks, 0)
  if (!(gamma.shape > 0 && gamma.scale > 0 && gamma.scale < Infinity))
    return refuse('number/out-of-range', 'valves', 'the visits of the group cannot be computed with')
  return { ok: true, ...gamma, exponent: input.exponent, valves: sums.length, leaks }
}

export interface LeaksSeen {
  readonly leaks: number
  readonly exposure: number
}

/**
 * Marginal log-likelihood of leak counts, but for a constant of the counts.
 *
 *     Σ ln Γ(a + d) - ln Γ(a) + a ln b - (a + d) ln(b + E)
 *
 * @source SRC-581 negative binomial likelihood (docs/sources.md)
 * @example logLikelihoodOfCounts([{ leaks: 1, exposure: 1 }], { shape: 1, scale: 1 }) // → -1.3862943611198906
 */
export function logLikelihoodOfCounts(
  seen: readonly LeaksSeen[],
  { shape, scale }: { readonly shape: number; readonly scale: number },
): number {
  const ofValve = ({ leaks, exposure }: LeaksSeen) =>
    (leaks === 0 ? 0 : logGamma(shape + leaks) - logGamma(shape)) -
    shape * Math.log1p(exposure / scale) -
    leaks * Math.log(scale + exposure)
  return seen.reduce((sum, valve) => sum + ofValve(valve), 0)
}

function gammaOf(seen: readonly LeaksSeen[]): { shape: number; scale: number } {
  const leaks = seen.reduce((sum, valve) => sum + valve.leaks, 0)
  // Half a leak stands in where there is none yet, or the likeliest rate would be nought.
  const standIn = leaks === 0 ? 0.5 : 0
  const meanRate = (leaks + standIn) / seen.reduce((sum, valve) => sum + valve.exposure, 0)
  const leaning = Math.log(SHAPE_LEANT_TO)
  const found = minimise(
    ([logShape = 0, logMean = 0]) => {
      const shape = Math.exp(logShape)
      const logLikelihood = logLikelihoodOfCounts(seen, { shape, scale: shape / Math.exp(logMean) })
      return (logShape - leaning) ** 2 / 2 - logLikelihood - standIn * logMean
    },
    [leaning, Math.log(meanRate)],
    { step: 0.5, tolerance: 1e-12, mostEvaluations: 400 },
  )
  const [logShape = 0, logMean = 0] = found.point
  return { shape: Math.exp(logShape), scale: Math.exp(logShape - logMean) }
}

/**
 * How long a valve may be left until the chance that a leak began unseen reaches the target.
 *
 *     interval = (age^k + b' ((1 - target)^(-1/a') - 1))^(1/k) - age      a' = a + leaks, b' = b + exposure
 *
 * The target holds on average over valves like this one: some leak more, some less, and their visits cannot tell which.
 *
 * @source SRC-580 interval between visits (docs/sources.md)
 * @returns days from now; up to a hundred years
 * @example intervalBetweenVisits({ group: { shape: 1, scale: 90, exponent: 1, valves: 1, leaks: 1 }, visits: [], age: days(0), target: ratio(0.1) }) // → { ok: true, interval: 10, leaks: 0, exposure: 0, holds: 'on average over like valves' }
 */
export function intervalBetweenVisits(input: {
  readonly group: LeakGroup
  readonly visits: readonly VisitSpan[]
  /** Days since the gland was last adjusted or repacked. */
  readonly age: Day
  /** Wanted chance that a leak begins before the visit. */
  readonly target: Ratio
}): Outcome<VisitInterval> {
  const { group, visits, age, target } = input
  if (!(group.shape > 0 && group.scale > 0 && group.shape < Infinity && group.scale < Infinity))
    return refuse('interval/unusable-group', 'group', 'shape and scale of the group must be above 0')
  if (!(target > 0 && target < 1))
    return refuse('interval/target', 'target', `the target must be above 0 and below 1, not ${target}`)
  if (!(age >= 0 && age <= LONGEST_AGE)) return refuse('interval/age', 'age', `an age of ${age} days cannot be computed with`)
  const sums = watched(visits, group.exponent)
  if (!sums.ok) return { ok: false, problem: sums.problem }
  const leaks = sums.leaking.length
  const shape = group.shape + leaks
  let exposure = sums.dry + sums.leaking.reduce((sum, span) => sum + span / 2, 0)
  for (let pass = 0; pass < PASSES; pass++) exposure = exposureOf(sums, shape / (group.scale + exposure))
  const logStaysDry = Math.log1p(0 - target)
  const further = (group.scale + exposure) * Math.expm1(logStaysDry / -shape)
  const interval = Math.min(LONGEST_AGE, (age ** group.exponent + further) ** (1 / group.exponent) - age)
  if (!Number.isFinite(interval) || !(interval >= 0))
    return refuse('number/out-of-range', 'group', 'the group has no leak rate that can be computed with')
  return { ok: true, interval: days(interval), leaks, exposure, holds: 'on average over like valves' }
}
