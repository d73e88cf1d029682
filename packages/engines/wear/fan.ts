import { addDays, type Day, days, type Instant, type Millimetre, mm, type Ratio } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import { bedInShare, unusableIn } from './prior.ts'
import { type ForecastInput, knownOf } from './forecast.ts'
import { normalByTable } from './normal-table.ts'

export interface FanInput extends Pick<ForecastInput, 'life' | 'prior' | 'earlierLives'> {
  /** Days from the last reading, or the last nip after it, to draw the fan at. */
  readonly ahead: readonly Day[]
  /** Chances that the reserve is below each line, between 0 and 1. */
  readonly chances: readonly Ratio[]
}

/** One upright line through the fan. */
export interface FanLine {
  readonly at: Instant
  /** In the order of the chances asked for; below nought where it is used up. */
  readonly reserves: readonly Millimetre[]
}

const FARTHEST_AHEAD = 36_525
/** The normal table ends at 7, and each halving gains a bit: a hundredth of a micrometre or better. */
const REACH = 7
const HALVINGS = 50

/**
 * The reserve to come, as a fan for a drawing: at each day the levels below which it lies with the chances asked for.
 *
 *     chance below x = Σ weight × Φ((x - level + rate × days of wear + bed-in fall × bed-in share then) / √variance)
 *
 * The smooth level with the follower's place between two nips as one more chance, as in the forecast itself.
 *
 * @source SRC-700 the wear model (docs/sources.md)
 * @returns one line for each day, or why there is none
 * @example reserveFan({ life: { readings: [], nips: [], repackedAt: null, step: mm(1) }, prior: defaultPrior, earlierLives: [], ahead: [], chances: [] }).ok // → false
 */
export function reserveFan(input: FanInput): Outcome<{ readonly lines: readonly FanLine[] }> {
  const { prior, life, ahead, chances } = input
  const unusable = unusableIn(prior)
  if (unusable) return refuse('forecast/unusable-prior', 'prior', `${unusable} of the prior is out of range`)
  if (!chances.every((chance) => chance > 0 && chance < 1))
    return refuse('forecast/impossible-chance', 'chances', 'a chance must be above 0 and below 1')
  if (!ahead.every((day) => day >= 0 && day <= FARTHEST_AHEAD))
    return refuse('fan/not-ahead', 'ahead', 'a fan is drawn from the last reading on, for a hundred years at most')
  const known = knownOf(input)
  if (!known.ok) return known
  const { filtered, posterior, countedFrom } = known
  const { wear } = prior
  const shareNow = bedInShare(wear, filtered.age)
  const lines = ahead.map((day) => {
    const share = bedInShare(wear, filtered.age + day)
    const daysOfWear = day + wear.bedInDays * (share - shareNow)
    const chance = wear.processVariance * daysOfWear + wear.bedInFallVariance * (share - shareNow) ** 2
    const deviation = Math.sqrt(filtered.levelVariance + life.step ** 2 / 12 + chance)
    const means = posterior.rates.map(
      (rate) => filtered.levelAtNoWear + (filtered.levelByRate - daysOfWear) * rate - wear.bedInFall * share,
    )
    const reserves = chances.map((below) => levelBelow(below, { means, weights: posterior.weights, deviation }))
    return { at: addDays(countedFrom, days(day)), reserves }
  })
  if (!lines.every(({ reserves }) => reserves.every(Number.isFinite)))
    return refuse('number/out-of-range', 'life', 'the readings lie too far apart to be computed with')
  return { ok: true, lines: lines.map(({ at, reserves }) => ({ at, reserves: reserves.map((reserve) => mm(reserve)) })) }
}

/** The level below which a mixture of normals lies with one chance, by halving. */
function levelBelow(
  wanted: number,
  mixture: { readonly means: readonly number[]; readonly weights: readonly number[]; readonly deviation: number },
): number {
  const { means, weights, deviation } = mixture
  let low = Math.min(...means) - REACH * deviation
  let high = Math.max(...means) + REACH * deviation
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2
    const chance = means.reduce((sum, mean, node) => sum + weights[node]! * normalByTable((middle - mean) / deviation), 0)
    if (chance < wanted) low = middle
    else high = middle
  }
  return (low + high) / 2
}
