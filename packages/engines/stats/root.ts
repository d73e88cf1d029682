export interface RisingFunction {
  /** The root lies between these. */
  readonly from: number
  readonly to: number
  readonly start: number
  /** Rises with its argument; -Infinity and Infinity allowed. */
  readonly valueAt: (x: number) => number
  readonly slopeAt: (x: number) => number
}

/** Newton's steps creep towards a root that is flat as well; halving is the faster from then on. */
const NEWTON_STEPS = 60
const MOST_STEPS = 400

/**
 * Where a rising function passes nought: Newton's steps, kept within a bracket that shrinks, and halving where they fail.
 *
 * @returns the root to the last digits of a double; an end of the bracket where the function does not pass nought inside it
 * @example rootByNewton({ from: 0, to: 9, start: 1, valueAt: (x) => x * x - 4, slopeAt: (x) => 2 * x }) // → 2
 */
export function rootByNewton({ from, to, start, valueAt, slopeAt }: RisingFunction): number {
  let low = from
  let high = to
  let x = Math.min(Math.max(start, from), to)
  for (let step = 0; step < MOST_STEPS; step++) {
    const value = valueAt(x)
    if (value === 0) return x
    if (value > 0) high = x
    else low = x
    const newton = x - value / slopeAt(x)
    const next = step < NEWTON_STEPS && newton > low && newton < high ? newton : (low + high) / 2
    if (Math.abs(next - x) <= 1e-16 * Math.abs(x) || next === low || next === high) return next
    x = next
  }
  return x
}
