import { readFileSync } from 'node:fs'
import path from 'node:path'
import { shortestTour } from '@glandkeeper/engines/schedule/shortest-tour'
import { describe, expect, it } from 'vitest'

/**
 * Instances and optima of TSPLIB95: G. Reinelt, ORSA Journal on Computing 3 (1991), pp. 376-384. The optima and the two
 * distances are from memory: EUC_2D is the straight line rounded to a whole number; ATT is the straight line over √10,
 * rounded up where it was rounded down.
 */
const instances = [
  { name: 'eil51', nodes: 51, kind: 'EUC_2D', optimum: 426 },
  { name: 'berlin52', nodes: 52, kind: 'EUC_2D', optimum: 7542 },
  { name: 'att48', nodes: 48, kind: 'ATT', optimum: 10_628 },
] as const

const distanceOf = {
  EUC_2D: (square: number) => Math.round(Math.sqrt(square)),
  ATT: (square: number) => Math.ceil(Math.sqrt(square / 10)),
}

function instanceIn(name: string) {
  const text = readFileSync(path.join(import.meta.dirname, 'values', `${name}.tsp`), 'utf8')
  const points = [...text.matchAll(/^\s*\d+\s+([\d.e+]+)\s+([\d.e+]+)\s*$/gm)].map(([, x, y]) => [Number(x), Number(y)] as const)
  return { kind: /EDGE_WEIGHT_TYPE\s*:\s*(\w+)/.exec(text)?.[1], points }
}

describe.each(instances)('$name', ({ name, nodes, kind, optimum }) => {
  const { points, ...read } = instanceIn(name)
  const distance = (from: number, to: number) =>
    distanceOf[kind]((points[from]![0] - points[to]![0]) ** 2 + (points[from]![1] - points[to]![1]) ** 2)

  it('is read whole', () => expect([read.kind, points.length]).toEqual([kind, nodes]))

  it.each([1, 2, 3])(`is toured within 1 % of ${optimum}, and never below it, with seed %i`, (seed) => {
    const tour = shortestTour(points.length, distance, { seed, iterations: 2000 })
    if (!tour.ok) throw new Error(tour.problem.detail)
    const legs = tour.order.map((node, at) => distance(node, tour.order[(at + 1) % nodes]!))
    expect(legs.reduce((sum, leg) => sum + leg, 0)).toBe(tour.length)
    expect(tour.length).toBeGreaterThanOrEqual(optimum)
    expect(tour.length).toBeLessThanOrEqual(1.01 * optimum)
  })
})
