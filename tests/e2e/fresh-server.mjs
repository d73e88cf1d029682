// The built server on a data folder of its own, with the demo plant. The folder goes with the process.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'

const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-e2e-'))
process.env.GLANDKEEPER_DATA = folder
delete process.env.DATABASE_URL
process.once('exit', () => rmSync(folder, { recursive: true, force: true }))
await import('../../apps/server/dist/main.js')
