// Checks who imports whom (.dependency-cruiser.cjs), and that the check has read anything at all:
// a cruise over nothing finds no fault.
import { createRequire } from 'node:module'
import { cruise } from 'dependency-cruiser'
import extractTSConfig from 'dependency-cruiser/config-utl/extract-ts-config'
import path from 'node:path'
import { root } from './setup.mjs'

const rules = createRequire(import.meta.url)('../.dependency-cruiser.cjs')
const LEAST_MODULES = 60

process.chdir(root)
const places = process.argv.length > 2 ? process.argv.slice(2) : ['packages', 'apps/server/src', 'apps/web/src']
const { output } = await cruise(places, { ...rules.options, ruleSet: rules, validate: true }, undefined, {
  tsConfig: extractTSConfig(path.join(root, rules.options.tsConfig.fileName)),
})
const { violations, totalCruised, error } = output.summary
for (const { rule, from, to } of violations) console.log(`${rule.name}: ${from} → ${to}`)
console.log(`boundaries: ${totalCruised} modules read, ${error} imports that may not be`)
if (totalCruised < LEAST_MODULES) {
  console.error(`boundaries: only ${totalCruised} modules were read, at least ${LEAST_MODULES} were expected`)
  process.exit(1)
}
process.exit(error === 0 ? 0 : 1)
