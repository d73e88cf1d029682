// npm run bench:chain: how long the proof of a chain of 1,000,000 entries takes, and how soon it can be cancelled.
// Fails when it takes more than 20 s, or a cancel more than 100 ms. `-- --events 100000` for a shorter chain.
import { checkNode, ensureBuilt, ensureInstalled } from './setup.mjs'

checkNode()
ensureInstalled()
ensureBuilt('clients', 'server')
await import('../tests/load/bench-chain.mjs')
