export interface SearchSettings {
  /** First stride along each coordinate, in the units of the point: one for all, or one for each. Not nought. */
  readonly step: number | readonly number[]
  /** Done when the values of all corners agree to this, relative to 1 + |value|, and the corners to its square root. */
  readonly tolerance: number
  readonly mostEvaluations: number
}

export interface Minimum {
  readonly point: readonly number[]
  /** What the objective gave at the point; Infinity when it was never finite. */
  readonly value: number
  readonly evaluations: number
  /** False when the evaluations ran out first, or no finite value was found. The best point so far is given all the same. */
  readonly hasConverged: boolean
}

interface Corner {
  readonly point: readonly number[]
  readonly value: number
}

/**
 * The least value of a function of a few numbers, without derivatives: a simplex that reflects, stretches and shrinks.
 *
 * It finds a minimum, not surely the least of several. An objective may refuse a point by giving Infinity or NaN.
 * Good for up to about ten coordinates of similar size: search in logarithms where a number must stay positive.
 *
 * @source SRC-304 Nelder and Mead, with their coefficients 1, 2, 1/2, 1/2 (docs/sources.md)
 * @returns always a point; whether to trust it says hasConverged
 * @example minimise(([x = 0]) => 4 + Math.abs(x), [0], { step: 1, tolerance: 1e-9, mostEvaluations: 200 }).value // → 4
 */
export function minimise(
  objective: (point: readonly number[]) => number,
  start: readonly number[],
  settings: SearchSettings,
): Minimum {
  const { tolerance, mostEvaluations } = settings
  const spent = { evaluations: 0 }
  const cornerAt = (point: readonly number[]): Corner => {
    spent.evaluations++
    const value = objective(point)
    return { point, value: Number.isNaN(value) ? Infinity : value }
  }
  let corners = firstSimplex(start, settings.step).map(cornerAt).toSorted(byValue)
  while (spent.evaluations < mostEvaluations && !agree(corners, tolerance)) {
    corners = (replaceWorst(corners, cornerAt) ?? shrink(corners, cornerAt)).toSorted(byValue)
  }
  const best = corners[0]!
  return { point: best.point, value: best.value, ...spent, hasConverged: agree(corners, tolerance) }
}

function firstSimplex(start: readonly number[], step: number | readonly number[]): number[][] {
  const stride = (index: number) => (typeof step === 'number' ? step : (step[index] ?? 1))
  return [[...start], ...start.map((_, moved) => start.map((x, index) => (index === moved ? x + stride(index) : x)))]
}

function byValue(one: Corner, other: Corner): number {
  // Infinity less Infinity is NaN, which would spoil the order.
  return one.value === other.value ? 0 : one.value - other.value
}

function agree(corners: readonly Corner[], tolerance: number): boolean {
  const best = corners[0]!
  const worst = corners.at(-1)!
  if (!Number.isFinite(best.value) || !(worst.value - best.value <= tolerance * (1 + Math.abs(best.value)))) return false
  const closeness = Math.sqrt(tolerance)
  return corners.every(({ point }) =>
    point.every((x, index) => Math.abs(x - best.point[index]!) <= closeness * (1 + Math.abs(best.point[index]!))),
  )
}

/** The simplex with its worst corner moved through the middle of the others; null when no such move is better. */
function replaceWorst(corners: readonly Corner[], cornerAt: (point: readonly number[]) => Corner): Corner[] | null {
  const worst = corners.at(-1)!
  const others = corners.slice(0, -1)
  const nextWorst = others.at(-1) ?? worst
  const centre = worst.point.map((_, index) => others.reduce((sum, { point }) => sum + point[index]!, 0) / others.length)
  /** 1 is the mirror image of the worst corner, 2 twice as far, -0.5 half way back to it. */
  const beyond = (factor: number) => cornerAt(centre.map((middle, index) => middle + factor * (middle - worst.point[index]!)))

  const mirrored = beyond(1)
  if (mirrored.value < others[0]!.value) {
    const stretched = beyond(2)
    return [...others, stretched.value < mirrored.value ? stretched : mirrored]
  }
  if (mirrored.value < nextWorst.value) return [...others, mirrored]
  const drawnIn = beyond(mirrored.value < worst.value ? 0.5 : -0.5)
  return drawnIn.value < Math.min(mirrored.value, worst.value) ? [...others, drawnIn] : null
}

function shrink(corners: readonly Corner[], cornerAt: (point: readonly number[]) => Corner): Corner[] {
  const best = corners[0]!
  const towardsBest = (point: readonly number[]) => point.map((x, index) => best.point[index]! + (x - best.point[index]!) / 2)
  return [best, ...corners.slice(1).map(({ point }) => cornerAt(towardsBest(point)))]
}
