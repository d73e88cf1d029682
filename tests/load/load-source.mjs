import path from 'node:path'
import { runnerImport } from 'vite'

const root = path.resolve(import.meta.dirname, '../..')
const fromSource = { resolve: { noExternal: [/^@glandkeeper\//], conditions: ['source', 'module', 'node'] } }
const settings = { configFile: false, root, logLevel: 'warn', environments: { inline: fromSource } }

/** A module in TypeScript that a test has too, from its path under the project's folder. */
export async function loadSource(file) {
  const { module } = await runnerImport(path.join(root, file), settings)
  return module
}
