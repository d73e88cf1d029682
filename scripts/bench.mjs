// npm run bench: how long the board and an entry take, beside the same statements on bare better-sqlite3 in the same run.
// Prints a table and writes .build/bench.json. `-- --valves 20000` for a smaller plant.
import { checkNode, ensureBuilt, ensureInstalled } from './setup.mjs'

checkNode()
ensureInstalled()
ensureBuilt('clients', 'server')
await import('../tests/load/bench.mjs')
