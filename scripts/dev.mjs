// npm run dev: the built server, and the pages from their sources on another port, changing as you save.
import { spawn } from 'node:child_process'
import path from 'node:path'
import { checkNode, ensureBuilt, ensureInstalled, root, say } from './setup.mjs'

checkNode()
ensureInstalled()
ensureBuilt('clients', 'server')
const server = spawn(process.execPath, [path.join(root, 'apps/server/dist/main.js')], { cwd: root, stdio: 'inherit' })
const pages = spawn(process.execPath, [path.join(root, 'node_modules/vite/bin/vite.js'), 'apps/web'], {
  cwd: root,
  stdio: 'inherit',
})
say('pages from their sources at http://127.0.0.1:4171; the server itself is restarted by hand')
for (const child of [server, pages]) child.once('exit', () => [server, pages].forEach((each) => each.kill()))
