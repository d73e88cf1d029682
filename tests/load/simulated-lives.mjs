import { loadSource } from './load-source.mjs'

/** The generator stands beside the test that shares it; what is timed is the built engine. */
export const loadSimulation = (file) => loadSource(`tests/simulation/${file}`)

/** So many lives out of fewer, each of a valve of its own. */
export function manyLives(few, count) {
  const read = few.filter(({ life }) => life.readings.length > 0)
  return Array.from({ length: count }, (_, index) => ({ ...read[index % read.length], valve: String(index) }))
}
