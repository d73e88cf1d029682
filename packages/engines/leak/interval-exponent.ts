import { type Outcome, refuse } from '../outcome.ts'
import { logGamma } from '../stats/log-gamma.ts'
import { minimise } from '../stats/nelder-mead.ts'
import { fitLeakGroup, type LeakGroup, type VisitSpan, watched, type Watched } from './interval.ts'

export interface ExponentChoice {
  /** The group with the exponent that is kept. */
  readonly group: LeakGroup
  /** The likeliest exponent, kept or not. */
  readonly likeliest: number
  /** Twice what it gains in log-likelihood over an exponent of 1. */
  readonly gain: number
  readonly keepsOne: boolean
}

/** 95 % point of chi-squared with one degree of freedom. */
const WORTH_IT = 3.84
/** Nodes over ln rate, evenly spaced. */
const NODES = 41
const REACH = 5
/** ln rate has a long lower tail that falls as exp(shape × ln rate): so far down nothing is left of it. */
const LOWER_TAIL = 14

/**
 * Decides whether glands of a group leak likelier the longer they have been dry: the exponent of age.
 *
 * Without letting the valves differ, a plant of good and bad valves looks as if glands got better with age; so the
 * likelihood is that of the spans themselves with the rates averaged out. The exponent stays 1 unless it clearly is not.
 *
 *     S(age) = exp(-rate × age^k)      rate gamma distributed
 *
 * @source SRC-583 likelihood ratio (docs/sources.md)
 * @returns the fitted group with exponent 1 or the likeliest one
 * @example chooseExponent([]).ok // → false
 */
export function chooseExponent(valves: readonly (readonly VisitSpan[])[]): Outcome<ExponentChoice> {
  const start = fitLeakGroup({ valves, exponent: 1 })
  if (!start.ok) return start
  const keepOne: Outcome<ExponentChoice> = { ok: true, group: start, likeliest: 1, gain: 0, keepsOne: true }
  // Without leaks nothing tells at what age they come.
  if (start.leaks < 2) return keepOne
  const lossOf = (logShape: number, logTime: number, exponent: number): number => {
    if (!(Math.abs(logShape) < 12 && Math.abs(logTime) < 20 && exponent > 0.2 && exponent < 4)) return Infinity
    const shape = Math.exp(logShape)
    const scale = shape * Math.exp(exponent * logTime)
    return -logLikelihoodOfSpans(valves, { shape, scale, exponent })
  }
  const settings = { step: 0.3, tolerance: 1e-8, mostEvaluations: 300 }
  const from = [Math.log(start.shape), Math.log(start.scale / start.shape)]
  const plain = minimise(([logShape = 0, logTime = 0]) => lossOf(logShape, logTime, 1), from, settings)
  const free = minimise(
    ([logShape = 0, logTime = 0, logExponent = 0]) => lossOf(logShape, logTime, Math.exp(logExponent)),
    [...plain.point, 0],
    settings,
  )
  const gain = 2 * (plain.value - free.value)
  if (Number.isNaN(gain)) return refuse('number/out-of-range', 'valves', 'the visits of the group cannot be computed with')
  const likeliest = Math.exp(free.point[2] ?? 0)
  if (!(gain > WORTH_IT)) return { ...keepOne, likeliest, gain: Math.max(0, gain) }
  const group = fitLeakGroup({ valves, exponent: likeliest })
  return group.ok ? { ok: true, group, likeliest, gain, keepsOne: false } : group
}

/**
 * Marginal log-likelihood of visits that only tell between which ages a leak began, rates averaged out by a sum.
 *
 *     Σ over valves  ln ∫ exp(-rate × dry) Π (1 - exp(-rate × D)) gamma(rate; a, b) d rate
 *
 * @source SRC-583 likelihood ratio (docs/sources.md)
 * @returns -Infinity when a visit is no span of time
 */
export function logLikelihoodOfSpans(
  valves: readonly (readonly VisitSpan[])[],
  group: { readonly shape: number; readonly scale: number; readonly exponent: number },
): number {
  let sum = 0
  for (const visits of valves) {
    const sums = watched(visits, group.exponent)
    if (!sums.ok) return -Infinity
    sum += logLikelihoodOfValve(sums, group)
  }
  return sum
}

function logLikelihoodOfValve(
  { dry, leaking }: Watched,
  { shape, scale }: { readonly shape: number; readonly scale: number },
): number {
  // Centred where the gamma after these visits is, so that the nodes lie under the hump however many visits there are.
  const after = { shape: shape + leaking.length, scale: scale + dry + leaking.reduce((total, span) => total + span / 2, 0) }
  const deviation = Math.sqrt(1 / after.shape + 1 / (2 * after.shape ** 2))
  const highestLogRate = Math.log(after.shape / after.scale) + REACH * deviation
  const spacing = (2 * REACH * deviation + LOWER_TAIL / after.shape) / (NODES - 1)
  const heights: number[] = []
  for (let node = 0; node < NODES; node++) {
    const logRate = highestLogRate - node * spacing
    const rate = Math.exp(logRate)
    let height = shape * logRate - (scale + dry) * rate
    for (const span of leaking) height += Math.log(-Math.expm1(-rate * span))
    heights.push(height)
  }
  const highest = Math.max(...heights)
  const total = heights.reduce((whole, height) => whole + Math.exp(height - highest), 0)
  return highest + Math.log(total * spacing) + shape * Math.log(scale) - logGamma(shape)
}
