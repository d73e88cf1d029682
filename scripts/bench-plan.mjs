// npm run bench:plan: how good the plan of rounds is beside a bound that a solver proves, and how long it takes.
// Prints a table, writes .build/bench-plan.json and fails when a target is missed. `-- --quick` takes the linear bound
// only and asks no gap of small plants; `-- --large` adds 100,000 valves.
import { checkNode, ensureBuilt, ensureInstalled } from './setup.mjs'

checkNode()
ensureInstalled()
ensureBuilt('clients', 'server')
await import('../tests/load/bench-plan.mjs')
