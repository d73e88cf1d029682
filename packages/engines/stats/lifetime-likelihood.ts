import type { KnownLifetime } from './lifetime.ts'

/** Log-likelihood of location and log of spread, with its slopes and curvatures. */
export interface Likelihood {
  readonly value: number
  readonly byLocation: number
  readonly byLogSpread: number
  readonly byLocationTwice: number
  readonly byLogSpreadTwice: number
  readonly byBoth: number
}

/** Slopes and curvatures of one life's part, by its standardised logarithms: the earlier one (a) and the later one (b). */
interface Part {
  readonly value: number
  readonly a: number
  readonly b: number
  readonly aa: number
  readonly bb: number
  readonly ab: number
}

/**
 * Log-likelihood of Weibull lifetimes, in the form of a smallest extreme value law of their logarithms.
 *
 *     z = (ln t - location) / spread       location = ln scale, spread = 1 / shape
 *     ended at t:        z - e^z - ln spread - ln t
 *     going at t:        -e^z
 *     ended between:     ln(exp(-e^za) - exp(-e^zb))
 *
 * Slopes and curvatures are exact, so the limits made from them are. The exponential is the spread 1.
 *
 * @source SRC-315 likelihood of censored Weibull lifetimes (docs/sources.md)
 * @param lives admitted by refusedKnownLifetimes
 * @example lifetimeLikelihood([{ kind: 'ended', at: 1 }], { location: 0, logSpread: 0 }).value // → -1
 */
export function lifetimeLikelihood(
  lives: readonly KnownLifetime[],
  at: { readonly location: number; readonly logSpread: number },
): Likelihood {
  const spread = Math.exp(at.logSpread)
  const standardised = (time: number) => (Math.log(time) - at.location) / spread
  const total = { value: 0, byLocation: 0, byLogSpread: 0, byLocationTwice: 0, byLogSpreadTwice: 0, byBoth: 0 }
  for (const life of lives) {
    const early = life.kind === 'between' ? standardised(life.after) : 0
    const late = standardised(life.kind === 'between' ? life.before : life.at)
    const part = partOf(life.kind, early, late)
    // A look at time 0 is infinitely early: it adds nothing, and 0 · ∞ must not spoil the sums.
    const a = early === -Infinity ? 0 : early
    total.value += part.value
    total.byLocation -= (part.a + part.b) / spread
    total.byLogSpread -= part.a * a + part.b * late
    total.byLocationTwice += (part.aa + 2 * part.ab + part.bb) / spread / spread
    total.byLogSpreadTwice += part.aa * a * a + 2 * part.ab * a * late + part.bb * late * late + part.a * a + part.b * late
    total.byBoth += (part.aa * a + part.ab * (a + late) + part.bb * late + part.a + part.b) / spread
    if (life.kind === 'ended') {
      total.value -= at.logSpread + Math.log(life.at)
      total.byLogSpread -= 1
    }
  }
  return total
}

function partOf(kind: KnownLifetime['kind'], early: number, late: number): Part {
  const hazard = Math.exp(late)
  switch (kind) {
    case 'ended':
      return { value: late - hazard, a: 0, b: 1 - hazard, aa: 0, bb: -hazard, ab: 0 }
    case 'going':
      return { value: -hazard, a: 0, b: -hazard, aa: 0, bb: -hazard, ab: 0 }
    case 'between':
      return partBetween(Math.exp(early), hazard)
  }
}

/** -A + ln(1 - e^-(B - A)) with the cumulative hazards A and B at the two looks. */
function partBetween(before: number, after: number): Part {
  const gained = after - before
  const odds = 1 / Math.expm1(gained)
  const slope = odds === 0 ? 0 : -(odds + odds * odds)
  return {
    value: Math.log(-Math.expm1(-gained)) - before,
    a: -before - odds * before,
    b: odds * after,
    aa: -before - odds * before + slope * before * before,
    bb: odds * after + slope * after * after,
    ab: -slope * before * after,
  }
}
