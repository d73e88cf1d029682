import { execFileSync } from 'node:child_process'
import path from 'node:path'

/** Worker threads cannot run TypeScript on every Node we support: tests run from sources, with the worker as it is built. */
export function buildWorker(): void {
  const root = path.resolve(import.meta.dirname, '../../..')
  execFileSync(process.execPath, [path.join(root, 'node_modules/typescript7/bin/tsc'), '-b', 'apps/server'], {
    cwd: root,
    stdio: 'inherit',
  })
}
