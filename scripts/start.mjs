// npm start: from a fresh clone to a running server, doing only what is not done yet.
import { checkNode, ensureBuilt, ensureInstalled } from './setup.mjs'

checkNode()
ensureInstalled()
ensureBuilt('clients', 'server', 'web')
await import('../apps/server/dist/main.js')
