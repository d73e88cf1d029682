import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { openReader } from '../../apps/server/dist/platform/store.js'

const root = path.resolve(import.meta.dirname, '../..')

/** The built server on a data folder of its own, killed without warning as often as wanted. */
export async function killedServer(port) {
  const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-faults-'))
  const address = `http://127.0.0.1:${port}`
  const env = {
    ...process.env,
    PORT: String(port),
    GLANDKEEPER_DATA: folder,
    GLANDKEEPER_DEMO_PASSWORD: 'tarn-hollow',
    DATABASE_URL: '',
  }
  let running = null
  let kills = 0

  const start = async () => {
    running = spawn(process.execPath, [path.join(root, 'apps/server/dist/main.js')], {
      env,
      stdio: ['ignore', 'ignore', 'inherit'],
    })
    for (let tries = 0; tries < 1200; tries++) {
      const isUp = await fetch(`${address}/api/health`).then(
        ({ ok }) => ok,
        () => false,
      )
      if (isUp) return
      await new Promise((resolve) => setTimeout(resolve, 50))
    }
    throw new Error('the server did not start')
  }
  const kill = async () => {
    const gone = new Promise((resolve) => running.once('exit', resolve))
    running.kill('SIGKILL')
    await gone
    kills += 1
  }
  await start()
  return {
    address,
    start,
    kill,
    kills: () => kills,
    record: () => recordIn(`file:${path.join(folder, 'glandkeeper.db')}`, env),
    end: async () => {
      await kill()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** What is in the register in the end, and whether its chain is whole and its states are what the entries say. */
async function recordIn(url, env) {
  const reader = await openReader(url)
  const ids = (await reader.read.event.findMany({ select: { id: true } })).map(({ id }) => id)
  await reader.close()
  const verify = spawn(process.execPath, [path.join(root, 'apps/server/dist/verify.js')], { env, stdio: 'ignore' })
  return { ids, isWhole: (await new Promise((resolve) => verify.once('exit', resolve))) === 0 }
}
