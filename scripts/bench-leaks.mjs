// npm run bench:leaks: leaks and packings of a large register: histories, lists, counts, and the study of them all.
// Prints a table, writes .build/bench-leaks.json and fails when a target is missed. `-- --valves 10000 --events 500000` for a smaller
// one; `-- --register FILE` keeps the register there and measures it again without making it anew.
import { checkNode, ensureBuilt, ensureInstalled } from './setup.mjs'

checkNode()
ensureInstalled()
ensureBuilt('clients', 'server')
await import('../tests/load/bench-leaks.mjs')
