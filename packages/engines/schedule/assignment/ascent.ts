const FIRST_LENGTH = 1.5
const STEPS_WITHOUT_GAIN = 12
const SHORTER = 0.7
/** Share of the heading before that is kept: it evens out steps to and fro. */
const KEPT = 0.3
const NEARLY_NOTHING = 1e-12

/** Multipliers that climb to a higher bound by subgradient steps, shorter ones when nothing is gained. */
export class Ascent {
  readonly multipliers: Float64Array
  /** The highest bound so far, and where it was. */
  bound = -Infinity
  best: Float64Array
  readonly #least: Float64Array
  readonly #heading: Float64Array
  #length = FIRST_LENGTH
  #idle = 0

  /** @param least by multiplier, what it may not fall below */
  constructor(start: Float64Array, least: Float64Array) {
    this.multipliers = start.slice()
    this.best = start.slice()
    this.#least = least
    this.#heading = new Float64Array(start.length)
  }

  /**
   * Notes the bound where it stands, and steps on towards the cost that is known.
   *
   * @param slope by multiplier, how the bound changes with it
   * @returns false where there is nowhere to go
   */
  climb(bound: number, slope: Float64Array, known: number): boolean {
    this.#note(bound)
    const { multipliers } = this
    const heading = this.#heading
    let square = 0
    for (let index = 0; index < slope.length; index += 1) {
      const rise = (1 - KEPT) * (slope[index] as number) + KEPT * (heading[index] as number)
      heading[index] = rise < 0 && (multipliers[index] as number) <= (this.#least[index] as number) ? 0 : rise
      square += (heading[index] as number) ** 2
    }
    if (!(square > NEARLY_NOTHING)) return false
    // While no cost is known, a share of the bound stands for what could be gained.
    const gain = Math.max(known < Infinity ? known - bound : Math.abs(bound) * 0.05, NEARLY_NOTHING)
    const step = (this.#length * gain) / square
    for (let index = 0; index < slope.length; index += 1)
      multipliers[index] = Math.max(
        this.#least[index] as number,
        (multipliers[index] as number) + step * (heading[index] as number),
      )
    return true
  }

  #note(bound: number): void {
    if (bound > this.bound) {
      this.bound = bound
      this.best = this.multipliers.slice()
      this.#idle = 0
      return
    }
    this.#idle += 1
    if (this.#idle < STEPS_WITHOUT_GAIN) return
    this.#length *= SHORTER
    this.#idle = 0
  }
}
