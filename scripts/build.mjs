// npm run build: everything `npm start` would build, without starting.
import { checkNode, ensureBuilt, ensureInstalled } from './setup.mjs'

checkNode()
ensureInstalled()
ensureBuilt('clients', 'server', 'web')
