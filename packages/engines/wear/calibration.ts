import { kaplanMeier, type SurvivalStep } from '../stats/kaplan-meier.ts'
import { normalQuantile } from '../stats/normal.ts'
import type { Outcome } from '../outcome.ts'
import type { JudgedForecast } from './calibration-place.ts'

/** A share with its limits, which cover the true one 95 times out of 100. */
export interface ShareSeen {
  readonly share: number
  readonly lower: number
  readonly upper: number
}

export interface Calibration {
  readonly forecasts: number
  readonly lives: number
  /** Forecasts of lives whose reserve was used up; the others were watched for a time and no more. */
  readonly ranOut: number
  /** Share of dates inside their interval; null where it cannot be told, and why. */
  readonly within80: ShareSeen | null
  readonly within95: ShareSeen | null
  readonly unknownBecause: 'too few lives' | 'not watched long enough' | null
  /** Of forecasts whose life ran out: days from the middle to the outcome, half of them less. */
  readonly middleMiss: MedianMiss | null
  /** The same forecasts judged twice, where a straight line had a date too. */
  readonly besideStraightLine: (MedianMiss & { readonly straightLineDays: number }) | null
}

interface MedianMiss {
  readonly forecasts: number
  readonly days: number
}

/** A share of fewer lives than this says nothing. */
export const LEAST_LIVES = 10
/** Where limits are laid: normal deviations either side for 95 %. */
const REACH = normalQuantile(0.975)
/** Products of fractions miss nought by this little. */
const DUST = 1e-12

/**
 * How often dates fell inside the intervals forecast for them, with lives that did not run out counted as far as they were watched.
 *
 *     share inside 80 % = S(0.1) - S(0.9)      S: share of places above, by Kaplan and Meier; 95 % likewise
 *     variance = S(a)² ((1 - c)² V(a) + c² (V(b) - V(a)))      c = S(b) / S(a), V: Greenwood's sum
 *     limits: Wilson's score with n = share (1 - share) / variance, times lives / forecasts
 *
 * The last factor counts each life once, however many of its forecasts are in. Holds where watching ends for reasons that have
 * nothing to do with the forecast: a gland repacked because its travel was nearly used up makes dates look later than they were.
 *
 * @source SRC-712 calibration with lives still going (docs/sources.md)
 * @returns shares with limits, and errors in days; or what about a place cannot be used
 * @example calibrationOf([]).unknownBecause // → 'too few lives'
 */
export function calibrationOf(judged: readonly JudgedForecast[]): Outcome<Calibration> {
  const seen = seenOf(judged)
  if (!seen.ok) return seen
  const within80 = shareBetween(seen, 0.1, 0.9)
  const within95 = shareBetween(seen, 0.025, 0.975)
  const both = judged.filter((one) => one.middleMiss !== null && one.straightLineMiss !== null)
  const middle = medianOf(judged.flatMap(({ middleMiss }) => middleMiss ?? []))
  const middleOfBoth = medianOf(both.flatMap(({ middleMiss }) => middleMiss ?? []))
  const straightLine = medianOf(both.flatMap(({ straightLineMiss }) => straightLineMiss ?? []))
  return {
    ok: true,
    forecasts: judged.length,
    lives: seen.lives,
    ranOut: judged.filter(({ ranOut }) => ranOut).length,
    within80,
    within95,
    unknownBecause: seen.lives < LEAST_LIVES ? 'too few lives' : within80 === null ? 'not watched long enough' : null,
    middleMiss: middle,
    besideStraightLine: middleOfBoth && straightLine && { ...middleOfBoth, straightLineDays: straightLine.days },
  }
}

/**
 * For each chance, the share of dates that had come by then: equal to the chance where forecasts are right.
 *
 * @source SRC-712 calibration with lives still going (docs/sources.md)
 * @returns a point for each chance up to which lives were watched; none with fewer than 10 lives
 * @example calibrationCurve({ judged: [], chances: [0.5] }) // → { ok: true, points: [] }
 */
export function calibrationCurve(input: {
  readonly judged: readonly JudgedForecast[]
  readonly chances: readonly number[]
}): Outcome<{ readonly points: readonly (ShareSeen & { readonly chance: number })[] }> {
  const seen = seenOf(input.judged)
  if (!seen.ok) return seen
  const points = input.chances.flatMap((chance) => {
    const share = shareBetween(seen, 0, chance)
    return share === null ? [] : [{ chance, ...share }]
  })
  return { ok: true, points }
}

interface Seen {
  readonly judged: readonly JudgedForecast[]
  readonly lives: number
  readonly steps: readonly SurvivalStep[]
}

function seenOf(judged: readonly JudgedForecast[]): Outcome<Seen> {
  const lives = new Set(judged.map(({ life }) => life)).size
  if (judged.length === 0) return { ok: true, judged, lives, steps: [] }
  // Up to the next thousandth: no chance asked about lies between, and many forecasts stay quick to count.
  const watched = judged.map(({ place, ranOut }) => ({ time: Math.ceil(place * 1000) / 1000, ended: ranOut }))
  const curve = kaplanMeier({ lives: watched, confidence: 0.95, scale: 'plain' })
  return curve.ok ? { ok: true, judged, lives, steps: curve.steps } : curve
}

/** Null with too few lives, or where none was watched so far. */
function shareBetween({ judged, lives, steps }: Seen, above: number, upTo: number): ShareSeen | null {
  const last = steps.at(-1)
  if (!last || lives < LEAST_LIVES || (last.time < upTo && last.survival > 0)) return null
  const start = heightAt(steps, above)
  const end = heightAt(steps, upTo)
  const share = start.survival - end.survival
  const kept = start.survival === 0 ? 0 : end.survival / start.survival
  const later = kept === 0 ? 0 : kept ** 2 * (end.greenwood - start.greenwood)
  const variance = start.survival ** 2 * ((1 - kept) ** 2 * start.greenwood + later)
  // All inside or none: no spread to tell the number from, so those whose fate is known are counted.
  const known = judged.filter(({ place, ranOut }) => ranOut || place >= upTo).length
  const number = variance > DUST ? (share * (1 - share)) / variance : known
  return scoreLimits(share, number * (lives / judged.length))
}

/** Nothing is left of the spread once nothing survives: kept is 0 there and takes its place out of the sum. */
function heightAt(steps: readonly SurvivalStep[], time: number): { survival: number; greenwood: number } {
  const step = steps.findLast((each) => each.time <= time)
  if (!step) return { survival: 1, greenwood: 0 }
  return { survival: step.survival, greenwood: step.survival === 0 ? 0 : ((step.standardError ?? 0) / step.survival) ** 2 }
}

function scoreLimits(share: number, number: number): ShareSeen {
  const squared = REACH ** 2
  const middle = number * share + squared / 2
  const reach = REACH * Math.sqrt(Math.max(number * share * (1 - share), 0) + squared / 4)
  const limit = (value: number) => Math.min(Math.max(value / (number + squared), 0), 1)
  return { share, lower: limit(middle - reach), upper: limit(middle + reach) }
}

function medianOf(values: readonly number[]): MedianMiss | null {
  if (values.length === 0) return null
  const ordered = values.toSorted((one, other) => one - other)
  const half = ordered.length / 2
  return { forecasts: ordered.length, days: (ordered[Math.ceil(half) - 1]! + ordered[Math.floor(half)]!) / 2 }
}
