import type { SurvivalStep } from '../../stats/kaplan-meier.ts'
import type { Lifetime } from '../../stats/lifetime.ts'

/** More than a screen or a page of paper can show apart. */
const MOST_STEPS = 200
const MOST_TIMES = 8
/** Times a month, or a twelfth or twelve of them: each at most 1.6 of the one before, so that five strides or more fit. */
const strides = [1, 1.5, 2, 3, 4, 6, 9]
/** Fractions of a month below these would not be round. */
const shortStrides = [0.25, 0.5, 0.75]

/**
 * A curve of so many steps at most, for drawing: all of a short one; of a long one its first and last step, and each step at
 * which it has fallen by its share of the whole fall since the last one kept. By less than that it is off between them.
 *
 * @param most three or more
 * @example thinned([]) // → []
 */
export function thinned(steps: readonly SurvivalStep[], most = MOST_STEPS): readonly SurvivalStep[] {
  if (steps.length <= most) return steps
  const least = (1 - (steps.at(-1)?.survival ?? 1)) / (most - 2)
  let keptAt = 1
  return steps.filter(({ survival, ended }, index) => {
    const isKept = ended > 0 && (keptAt === 1 || keptAt - survival >= least)
    if (isKept) keptAt = survival
    return isKept || index === steps.length - 1
  })
}

/**
 * Six to eight round times from 0 to the longest life, for the line of figures under a curve; fewer below two and a half months.
 *
 * @example roundTimes(50) // → [0, 9, 18, 27, 36, 45]
 */
export function roundTimes(longest: number): number[] {
  const stride = strideFor(longest)
  const times: number[] = []
  for (let place = 0; place < MOST_TIMES && place * stride <= longest; place++) times.push(place * stride)
  return times
}

function strideFor(longest: number): number {
  const fits = (stride: number) => longest < stride * MOST_TIMES
  const short = shortStrides.find(fits)
  if (short !== undefined) return short
  for (let unit = 1; unit < Infinity; unit *= 12) {
    const found = strides.find((stride) => fits(stride * unit))
    if (found !== undefined) return found * unit
  }
  return longest
}

/**
 * How many lives are watched at each time, those that end or are last seen at it included.
 *
 * @param times in rising order
 * @example watchedAt([{ time: 5, ended: true }, { time: 9, ended: false }], [0, 6]) // → [{ time: 0, lives: 2 }, { time: 6, lives: 1 }]
 */
export function watchedAt(
  lives: readonly Lifetime[],
  times: readonly number[],
): { readonly time: number; readonly lives: number }[] {
  return times.map((time) => ({ time, lives: lives.reduce((sum, life) => (life.time >= time ? sum + 1 : sum), 0) }))
}
