import { type Outcome, refuse } from '../outcome.ts'
import { refusedFigures } from './admissible.ts'
import { chiSquaredAbove } from './chi-squared.ts'
import { countLives, type LifeCount, type Lifetime, refusedLifetimes } from './lifetime.ts'
import { solve } from './linear.ts'

export interface GroupTally {
  readonly lives: number
  /** Ends seen, weighted; their plain number when rho is 0. */
  readonly observed: number
  /** Ends to be expected if all groups were alike, weighted the same. */
  readonly expected: number
}

export interface LogRank {
  readonly chiSquared: number
  readonly degreesOfFreedom: number
  /** Chance of so large a difference between groups that are alike. */
  readonly p: number
  readonly groups: readonly GroupTally[]
}

/**
 * Do groups differ in how long their lives last? The log-rank test, for any number of groups.
 *
 *     expected of a group = Σ ended · (at risk in the group / at risk)     over the times of an end
 *     chi-squared = (O - E)ᵀ V⁻¹ (O - E)                               V hypergeometric, one group left out
 *
 * With rho above 0 each time counts by the survival of all just before it, to the power rho: 1 (Peto and Peto) gives early
 * differences more weight. The chi-squared law holds for some ten ends or more. A group with no one at risk at any end is left out.
 *
 * @source SRC-314 log-rank test (docs/sources.md)
 * @param input.rho 0 for the plain test; 0 or more
 * @returns the test and its tallies, or a named problem
 * @example logRank({ groups: [[{ time: 1, ended: true }], [{ time: 2, ended: true }]], rho: 0 }).chiSquared // → 1
 */
export function logRank(input: { readonly groups: readonly (readonly Lifetime[])[]; readonly rho: number }): Outcome<LogRank> {
  const { groups, rho } = input
  if (groups.length < 2) return refuse('log-rank/one-group', 'groups', `a comparison needs two groups, not ${groups.length}`)
  if (!(rho >= 0 && rho < Infinity)) return refuse('log-rank/not-a-power', 'rho', `rho must be 0 or more, not ${rho}`)
  const refused = groups.map((lives) => refusedLifetimes('groups', lives)).find((problem) => problem !== null)
  if (refused) return refused

  const { observed, expected, variance } = tally(groups, rho)
  const counted = groups.map((_, group) => group).filter((group) => variance[group]![group]! > 0)
  if (counted.length < 2)
    return refuse('log-rank/nothing-to-compare', 'groups', 'no life ended while two groups or more were watched')
  const kept = counted.slice(1)
  const surplus = kept.map((group) => observed[group]! - expected[group]!)
  const weighted = solve(
    kept.map((row) => kept.map((column) => variance[row]![column]!)),
    surplus,
  )
  if (!weighted) return refuse('log-rank/nothing-to-compare', 'groups', 'the groups were never watched together')
  const chiSquared = Math.max(
    0,
    surplus.reduce((sum, difference, index) => sum + difference * weighted[index]!, 0),
  )
  const figures = { chiSquared, degreesOfFreedom: kept.length, p: chiSquaredAbove(chiSquared, kept.length) }
  return (
    refusedFigures('groups', Object.values(figures)) ?? {
      ok: true,
      ...figures,
      groups: groups.map((lives, group) => ({
        lives: lives.length,
        observed: observed[group]!,
        expected: expected[group]!,
      })),
    }
  )
}

function tally(groups: readonly (readonly Lifetime[])[], rho: number) {
  const observed = groups.map(() => 0)
  const expected = groups.map(() => 0)
  const variance = groups.map(() => groups.map(() => 0))
  const ofGroups = groups.map((lives) => watcher(countLives(lives)))
  const shares = groups.map(() => 0)
  let survival = 1
  for (const { time, atRisk, ended } of countLives(groups.flat())) {
    if (ended === 0) continue
    const weight = survival ** rho
    // The hypergeometric variance of a draw of all that are left is 0; its formula would be 0/0.
    const spread = atRisk > 1 ? (weight * weight * ended * (atRisk - ended)) / (atRisk - 1) : 0
    for (let group = 0; group < ofGroups.length; group++) {
      const own = ofGroups[group]!(time)
      const share = own.atRisk / atRisk
      shares[group] = share
      observed[group]! += weight * own.ended
      expected[group]! += weight * ended * share
    }
    addSpread(variance, shares, spread)
    survival *= (atRisk - ended) / atRisk
  }
  return { observed, expected, variance }
}

/** Of every pair of groups at every time of an end: plain indices, as this is nearly all the time a comparison takes. */
function addSpread(variance: readonly number[][], shares: readonly number[], spread: number): void {
  for (let group = 0; group < shares.length; group++) {
    const row = variance[group]!
    const spreadOfGroup = spread * shares[group]!
    for (let other = 0; other < shares.length; other++) {
      // A group watched alone has no spread: 1 - 1 says so to the last bit, where two sums would leave dust.
      const share = other === group ? shares[other]! - 1 : shares[other]!
      row[other]! -= spreadOfGroup * share
    }
  }
}

/** Tells, for times asked in rising order, how many of one group are watched and how many end. */
function watcher(counts: readonly LifeCount[]): (time: number) => { atRisk: number; ended: number } {
  let next = 0
  return (time) => {
    while (next < counts.length && counts[next]!.time < time) next++
    const count = counts[next]
    if (!count) return { atRisk: 0, ended: 0 }
    return { atRisk: count.atRisk, ended: count.time === time ? count.ended : 0 }
  }
}
