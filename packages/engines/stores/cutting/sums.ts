/**
 * The sum of each set of sizes; a set is a whole number, its lowest bit is the first size.
 *
 * @example sumsOfSets([30, 20]) // → [0, 30, 20, 50]
 */
export function sumsOfSets(sizes: readonly number[]): number[] {
  const sums = [0]
  for (const size of sizes) {
    const before = sums.length
    for (let set = 0; set < before; set += 1) sums.push((sums[set] ?? 0) + size)
  }
  return sums
}

/**
 * The largest whole number that divides all sizes; 1 where there are none.
 *
 * @example commonStep([300, 200, 50]) // → 50
 */
export function commonStep(sizes: readonly number[]): number {
  return sizes.reduce(commonDivisor, 0) || 1
}

function commonDivisor(one: number, other: number): number {
  return other === 0 ? one : commonDivisor(other, one % other)
}
