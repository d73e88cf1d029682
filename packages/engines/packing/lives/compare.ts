import { type Outcome, refuse } from '../../outcome.ts'
import { refusedConfidence } from '../../stats/admissible.ts'
import { kaplanMeier, type SurvivalStep } from '../../stats/kaplan-meier.ts'
import type { Lifetime } from '../../stats/lifetime.ts'
import { type LogRank, logRank } from '../../stats/log-rank.ts'
import { fitWeibull, type WeibullFit } from '../../stats/weibull.ts'
import { roundTimes, thinned, watchedAt } from './curve.ts'

export interface PackingGroup {
  readonly name: string
  /** Times in months. */
  readonly lives: readonly Lifetime[]
}

/** Months. `scale`: 63.2 % have worn out by then; `shape`: below 1 they fail early, above 1 they wear out. */
export type LifeLaw = Pick<WeibullFit, 'scale' | 'scaleLower' | 'scaleUpper' | 'shape' | 'shapeLower' | 'shapeUpper'>

export interface GroupOfLives {
  readonly name: string
  readonly lives: number
  readonly ended: number
  /** Still held when last known of. */
  readonly censored: number
  /** Fewer than five ended: shown, not compared. */
  readonly isTooFew: boolean
  /** 200 at most. */
  readonly steps: readonly SurvivalStep[]
  readonly atRisk: readonly { readonly time: number; readonly lives: number }[]
  /** The longest life, ended or not; null without lives. */
  readonly longest: number | null
  /** Null while more than half still hold. */
  readonly median: number | null
  readonly medianLower: number | null
  readonly medianUpper: number | null
  readonly law: LifeLaw | null
  /** Null where there is a law, or none was asked for. */
  readonly whyNoLaw: string | null
}

export interface PackingComparison {
  readonly confidence: number
  readonly groups: readonly GroupOfLives[]
  /** Over the groups that are not too few; null with fewer than two of them. */
  readonly difference: (Pick<LogRank, 'chiSquared' | 'degreesOfFreedom' | 'p'> & { readonly between: readonly string[] }) | null
  /** Null where there is a difference to tell. */
  readonly whyNoDifference: string | null
}

/** Below it a median rests on one or two packings, and the chi-squared law on too little. */
const LEAST_ENDED = 5

/**
 * Which packing lasts: lives of each group, their median and law, and whether the groups differ by more than chance.
 *
 *     share still holding   Kaplan-Meier, limits on the log-log scale
 *     law                   Weibull, limits on the logarithm
 *     difference            log-rank, over the groups with five ended lives or more: two of them have ten between them
 *
 * Holds for lives of different valves. Several lives of one valve are alike, and make the difference look surer than it is; so does
 * a family that was put in the easier valves.
 *
 * @source SRC-313 curve and median · SRC-314 difference · SRC-315 law · SRC-768 five ended lives (docs/sources.md)
 * @param input.weibull whether to fit a law to each group
 * @returns each group and the difference; or `packings/no-groups`, `packings/name-twice`, `lifetimes/…`, `confidence/…`
 * @example comparePackings({ groups: [{ name: 'graphite braid', lives: [{ time: 5, ended: true }] }], confidence: 0.95, weibull: false }).groups[0].isTooFew // → true
 */
export function comparePackings(input: {
  readonly groups: readonly PackingGroup[]
  readonly confidence: number
  readonly weibull: boolean
}): Outcome<PackingComparison> {
  const { groups, confidence, weibull } = input
  const refused = refusedGroups(groups) ?? refusedConfidence(confidence)
  if (refused) return refused
  const longest = groups.reduce((most, { lives }) => lives.reduce((so, { time }) => Math.max(so, time), most), 0)
  const times = roundTimes(longest)
  const described: GroupOfLives[] = []
  for (const group of groups) {
    const found = groupOf(group, times, confidence)
    if (!found.ok) return found
    described.push({ ...found.group, ...(weibull ? lawOf(group, found.group.isTooFew, confidence) : noLaw(null)) })
  }
  const compared = groups.filter((_, index) => described[index]?.isTooFew === false)
  return { ok: true, confidence, groups: described, ...differenceOf(compared) }
}

function refusedGroups(groups: readonly PackingGroup[]) {
  if (groups.length === 0) return refuse('packings/no-groups', 'groups', 'there is no packing to compare')
  const names = new Set<string>()
  for (const { name } of groups) {
    if (names.has(name)) return refuse('packings/name-twice', 'groups', `two groups are named ${name}`)
    names.add(name)
  }
  return null
}

function groupOf(
  { name, lives }: PackingGroup,
  times: readonly number[],
  confidence: number,
): Outcome<{ readonly group: Omit<GroupOfLives, 'law' | 'whyNoLaw'> }> {
  const ended = lives.reduce((sum, life) => (life.ended ? sum + 1 : sum), 0)
  const counts = { name, lives: lives.length, ended, censored: lives.length - ended, isTooFew: ended < LEAST_ENDED }
  const atRisk = watchedAt(lives, times)
  if (lives.length === 0) {
    const unknown = { longest: null, median: null, medianLower: null, medianUpper: null }
    return { ok: true, group: { ...counts, steps: [], atRisk, ...unknown } }
  }
  const curve = kaplanMeier({ lives, confidence, scale: 'log-log' })
  if (!curve.ok) return curve
  const { steps, median, medianLower, medianUpper } = curve
  const longest = steps.at(-1)?.time ?? null
  return { ok: true, group: { ...counts, steps: thinned(steps), atRisk, longest, median, medianLower, medianUpper } }
}

function noLaw(whyNoLaw: string | null): Pick<GroupOfLives, 'law' | 'whyNoLaw'> {
  return { law: null, whyNoLaw }
}

function lawOf({ lives }: PackingGroup, isTooFew: boolean, confidence: number): Pick<GroupOfLives, 'law' | 'whyNoLaw'> {
  if (isTooFew) return noLaw(`fewer than ${LEAST_ENDED} have ended`)
  const fit = fitWeibull({ lives: lives.map(({ time, ended }) => ({ kind: ended ? 'ended' : 'going', at: time })), confidence })
  if (!fit.ok) return noLaw(fit.problem.detail)
  const { scale, scaleLower, scaleUpper, shape, shapeLower, shapeUpper } = fit
  return { law: { scale, scaleLower, scaleUpper, shape, shapeLower, shapeUpper }, whyNoLaw: null }
}

function differenceOf(compared: readonly PackingGroup[]): Pick<PackingComparison, 'difference' | 'whyNoDifference'> {
  if (compared.length < 2)
    return { difference: null, whyNoDifference: `fewer than two packings with ${LEAST_ENDED} ended lives or more` }
  const test = logRank({ groups: compared.map(({ lives }) => lives), rho: 0 })
  if (!test.ok) return { difference: null, whyNoDifference: test.problem.detail }
  const { chiSquared, degreesOfFreedom, p } = test
  return { difference: { chiSquared, degreesOfFreedom, p, between: compared.map(({ name }) => name) }, whyNoDifference: null }
}
