/**
 * Solves a small square set of linear equations by elimination, the largest pivot first.
 *
 * @returns the solution; null when the equations do not decide it
 * @example solve([[2, 0], [0, 4]], [2, 2]) // → [1, 0.5]
 */
export function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const rows = matrix.map((row, index) => [...row, right[index]!])
  const size = rows.length
  const largest = Math.max(...matrix.flat().map((cell) => Math.abs(cell)))
  for (let step = 0; step < size; step++) {
    const below = rows.slice(step)
    const pivot = below.reduce((best, row) => (Math.abs(row[step]!) > Math.abs(best[step]!) ? row : best))
    if (!(Math.abs(pivot[step]!) > largest * 1e-13)) return null
    rows[rows.indexOf(pivot)] = rows[step]!
    rows[step] = pivot
    for (const row of rows.slice(step + 1)) {
      const factor = row[step]! / pivot[step]!
      for (let column = step; column <= size; column++) row[column]! -= factor * pivot[column]!
    }
  }
  const solution = Array.from({ length: size }, () => 0)
  for (let step = size - 1; step >= 0; step--) {
    const row = rows[step]!
    const known = row.slice(step + 1, size).reduce((sum, cell, index) => sum + cell * solution[step + 1 + index]!, 0)
    solution[step] = (row[size]! - known) / row[step]!
  }
  return solution
}
