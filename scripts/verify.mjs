// npm run verify: walks every site's chain of events and compares the kept states with the events.
// Reads only; the server may be running.
import { checkNode, ensureBuilt, ensureInstalled } from './setup.mjs'

checkNode()
ensureInstalled()
ensureBuilt('clients', 'server')
await import('../apps/server/dist/verify.js')
