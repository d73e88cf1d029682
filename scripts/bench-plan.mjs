// npm run bench:plan: how good the plans of rounds and of repacks are beside proven bounds, and how long they take.
// Prints tables, writes .build/bench-plan.json and fails when a target is missed. `-- --only rounds` or `-- --only repacks`
// measures one of them; `-- --quick` takes the linear bound of rounds only and asks no gap of small plants; `-- --large`
// adds 100,000 valves.
import { checkNode, ensureBuilt, ensureInstalled } from './setup.mjs'

checkNode()
ensureInstalled()
ensureBuilt('clients', 'server')
await import('../tests/load/bench-plan.mjs')
