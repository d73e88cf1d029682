import path from 'node:path'
import { runnerImport } from 'vite'

const root = path.resolve(import.meta.dirname, '../..')

/** The generator is in TypeScript, beside the test that shares it; what is timed is the built engine. */
const fromSource = { resolve: { noExternal: [/^@glandkeeper\//], conditions: ['source', 'module', 'node'] } }
const settings = { configFile: false, root, logLevel: 'warn', environments: { inline: fromSource } }

export async function loadSimulation(file) {
  const { module } = await runnerImport(path.join(root, 'tests/simulation', file), settings)
  return module
}

/** So many lives out of fewer, each of a valve of its own. */
export function manyLives(few, count) {
  const read = few.filter(({ life }) => life.readings.length > 0)
  return Array.from({ length: count }, (_, index) => ({ ...read[index % read.length], valve: String(index) }))
}
