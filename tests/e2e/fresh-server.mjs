// The built server with the demo plant. Its data folder goes with the process.
import { rmSync } from 'node:fs'

const folder = process.env.GLANDKEEPER_DATA
delete process.env.DATABASE_URL
process.once('exit', () => rmSync(folder, { recursive: true, force: true }))
await import('../../apps/server/dist/main.js')
