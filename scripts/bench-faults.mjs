// npm run bench:faults: 10,000 entries from a real browser's outbox through random cuts, kills and duplicates.
// Prints how many were lost and how many doubled; both must be 0. `-- --entries 1000 --seed 7` for another run.
import { checkNode, ensureBuilt, ensureInstalled } from './setup.mjs'

checkNode()
ensureInstalled()
ensureBuilt('clients', 'server', 'web')
await import('../tests/load/bench-faults.mjs')
