// The plans of rounds and of repacks beside lower bounds that are proven. Prints tables, writes .build/bench-plan.json,
// and ends with 1 when a target is missed. `-- --only rounds`, `repacks` or `register` measures one of them; `-- --quick`
// takes the linear bound of rounds only, and asks no gap of plants that need the other; `-- --large` adds 100,000 valves.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { cpus } from 'node:os'
import path from 'node:path'
import { benchInRegister } from './bench-in-register.mjs'
import { benchRepacks } from './bench-repacks.mjs'
import { benchRounds } from './bench-rounds.mjs'

const file = path.resolve(import.meta.dirname, '../../.build/bench-plan.json')
const has = (option) => process.argv.includes(option)
const only = has('--only') ? process.argv[process.argv.indexOf('--only') + 1] : null
const parts = ['rounds', 'repacks', 'register']
if (only !== null && !parts.includes(only)) throw new Error(`--only takes ${parts.join(', ')}, not ${only}`)
const options = { isQuick: has('--quick'), isLarge: has('--large') }

const processor = `${cpus()[0]?.model}, Node ${process.versions.node}`
console.log(processor)
const report = { ...before(), node: process.versions.node, processor: cpus()[0]?.model }
const measured = []
if (only === null || only === 'rounds') {
  report.isQuick = options.isQuick
  report.results = benchRounds(options)
  measured.push(...report.results)
}
if (only === null || only === 'repacks') {
  report.repacks = await benchRepacks(options)
  measured.push(...report.repacks)
}
if (only === null || only === 'register') {
  report.register = await benchInRegister(options)
  measured.push(...report.register)
}
mkdirSync(path.dirname(file), { recursive: true })
writeFileSync(file, `${JSON.stringify(report, null, 1)}\n`)
const missed = measured.flatMap(({ misses }) => misses)
for (const line of missed) console.error(`missed: ${line}`)
if (missed.length === 0) console.log('every target is met')
else process.exitCode = 1

/** What is measured alone leaves the other part as it was. */
function before() {
  try {
    return only === null ? {} : JSON.parse(readFileSync(file, 'utf8'))
  } catch {
    return {}
  }
}
