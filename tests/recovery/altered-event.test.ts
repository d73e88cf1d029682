import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { addValve } from '@glandkeeper/contract/valves'
import { sendEvents } from '@glandkeeper/contract/events'
import { aReading } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { expect, it, onTestFinished } from 'vitest'
import { aServer } from '../../apps/server/testing/a-server.ts'

/** A register with three entries, in a data folder as the server leaves it. */
async function aFolder(): Promise<string> {
  const server = await aServer()
  const { valveId } = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-1' }) })
  const events = [1, 2, 3].map((count) => aReading({ valveId, takenAt: `2026-05-0${count}T08:00:00Z`, gapLeft: 9, gapRight: 9 }))
  await server.expectOk('fitter', sendEvents, { body: { events } })
  await server.store.close()
  const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-verify-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  copyFileSync(server.databaseUrl.slice('file:'.length), path.join(folder, 'glandkeeper.db'))
  return folder
}

function verify(folder: string): { status: number | null; said: string } {
  const verifyScript = path.resolve(import.meta.dirname, '../../apps/server/dist/verify.js')
  const env = { ...process.env, GLANDKEEPER_DATA: folder, DATABASE_URL: undefined }
  const { status, stdout, stderr } = spawnSync(process.execPath, [verifyScript], { env, encoding: 'utf8' })
  return { status, said: stdout + stderr }
}

function forge(folder: string, sql: string): void {
  const database = new Database(path.join(folder, 'glandkeeper.db'))
  database.exec('DROP TRIGGER event_no_update; DROP TRIGGER event_no_delete;')
  database.exec(sql)
  database.close()
}

it('a register as it was written is proved whole', async () => {
  const { status, said } = verify(await aFolder())
  expect([status, said]).toEqual([0, expect.stringMatching(/^Test mill: 3 events, chain whole, head [0-9a-f]{64}\n$/)])
})

it.each([
  ["UPDATE event SET body = replace(body, '9', '8') WHERE position = 2", 'chain broken at position 2'],
  ["UPDATE event SET taken_at = '2026-01-01T00:00:00.000+00:00' WHERE position = 3", 'chain broken at position 3'],
  ['DELETE FROM event WHERE position = 1', 'chain broken at position 1'],
  ['DELETE FROM event WHERE position = 3', 'chain broken at position 3'],
  ['UPDATE valve_state SET reserve_mm = 12', 'the kept state of BH-1 is not what its events make: reserveMm'],
])('%s past the triggers is found and named', async (sql, named) => {
  const folder = await aFolder()
  forge(folder, sql)
  const { status, said } = verify(folder)
  expect(status).toBe(1)
  expect(said).toContain(named)
})
