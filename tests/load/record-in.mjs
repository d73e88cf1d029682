import { spawn } from 'node:child_process'
import path from 'node:path'
import { openReader } from '../../apps/server/dist/platform/store.js'

const verify = path.resolve(import.meta.dirname, '../../apps/server/dist/verify.js')

/** What is in a data folder's register, and whether its chain is whole and its states are what the entries say. */
export async function recordIn(folder) {
  const reader = await openReader(`file:${path.join(folder, 'glandkeeper.db')}`)
  const ids = (await reader.read.event.findMany({ select: { id: true } })).map(({ id }) => id)
  await reader.close()
  const env = { ...process.env, GLANDKEEPER_DATA: folder, DATABASE_URL: '' }
  const verifying = spawn(process.execPath, [verify], { env, stdio: 'ignore' })
  return { ids, isWhole: (await new Promise((resolve) => verifying.once('exit', resolve))) === 0 }
}
