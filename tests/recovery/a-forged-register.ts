import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { addValve } from '@glandkeeper/contract/valves'
import { type Evidence, exportEvidence } from '@glandkeeper/contract/evidence'
import { sendEvents } from '@glandkeeper/contract/events'
import { aReading } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { onTestFinished } from 'vitest'
import { type ChainedEvent, hashOf } from '../../apps/server/src/platform/chain.ts'
import { proveRegister } from '../../apps/server/src/prove-register.ts'
import { aServer } from '../../apps/server/testing/a-server.ts'

const root = path.resolve(import.meta.dirname, '../..')

interface Left {
  /** A data folder as the server leaves it. */
  readonly folder: string
  /** Null where nobody has exported, so that no head is signed. */
  readonly evidence: Evidence | null
}

interface Made {
  readonly database: Buffer
  readonly evidence: Evidence | null
}

/** Every test forges a copy of its own of what was made once. */
const made = new Map<boolean, Made>()

/** A register with three entries; with an export of them all, which signs the head. */
export async function aFolder({ isExported }: { isExported: boolean }): Promise<Left> {
  const { database, evidence } = made.get(isExported) ?? (await make(isExported))
  const folder = anEmptyFolder()
  writeFileSync(path.join(folder, 'glandkeeper.db'), database)
  return { folder, evidence }
}

async function make(isExported: boolean): Promise<Made> {
  const server = await aServer()
  const { valveId } = await server.expectOk('planner', addValve, { body: aValve({ areaCode: 'BH', tag: 'BH-1' }) })
  const events = [1, 2, 3].map((count) => aReading({ valveId, takenAt: `2026-05-0${count}T08:00:00Z`, gapLeft: 9, gapRight: 9 }))
  await server.expectOk('fitter', sendEvents, { body: { events } })
  const evidence = isExported ? await server.expectOk('engineer', exportEvidence, { query: { tag: 'BH-1' } }) : null
  await server.store.close()
  const one = { database: readFileSync(server.databaseUrl.slice('file:'.length)), evidence }
  made.set(isExported, one)
  return one
}

export function anEmptyFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-verify-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** What `npm run verify` says over a data folder, or of an export that is named. */
export function verify(folder: string, ...files: readonly string[]): { status: number | null; said: string } {
  return run(path.join(root, 'apps/server/dist/verify.js'), files, { GLANDKEEPER_DATA: folder, DATABASE_URL: '' })
}

/** The same of a register, without a process of its own. */
export async function proved(folder: string): Promise<{ faults: number; said: string }> {
  const lines: string[] = []
  const faults = await proveRegister(`file:${path.join(folder, 'glandkeeper.db')}`, (line) => lines.push(line))
  return { faults, said: lines.join('\n') }
}

/** What the check says that needs nothing of ours. */
export function checkAlone(...given: readonly string[]): { status: number | null; said: string } {
  return run(path.join(root, 'scripts/check-evidence.mjs'), given, {})
}

function run(script: string, given: readonly string[], environment: object): { status: number | null; said: string } {
  const env = { ...process.env, ...environment }
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, ...given], { env, encoding: 'utf8' })
  return { status, said: stdout + stderr }
}

/** Past the triggers, as somebody with the file and a tool for it could. */
export function forge(folder: string, work: string | ((database: Database.Database) => void)): void {
  const database = new Database(path.join(folder, 'glandkeeper.db'))
  for (const table of ['event', 'chain_seal'])
    database.exec(`DROP TRIGGER IF EXISTS ${table}_no_update; DROP TRIGGER IF EXISTS ${table}_no_delete;`)
  if (typeof work === 'string') database.exec(work)
  else work(database)
  database.close()
}

type Row = Omit<ChainedEvent, 'takenAt' | 'receivedAt'> & { readonly takenAt: string; readonly receivedAt: string }

/** Works every hash of the chain out again from what stands in it now, and the head of the site too. */
export function rehash(database: Database.Database): void {
  const columns =
    'id, site_id siteId, position, valve_id valveId, kind, version, taken_at takenAt, received_at receivedAt, person_id personId, device, body'
  const rows = database.prepare<[], Row>(`SELECT ${columns} FROM event ORDER BY position`).all()
  let before = ''
  for (const { takenAt, receivedAt, ...row } of rows) {
    before = hashOf(before, { ...row, takenAt: new Date(takenAt), receivedAt: new Date(receivedAt) })
    database.prepare('UPDATE event SET hash = ? WHERE id = ?').run(before, row.id)
  }
  database.prepare('UPDATE site SET chain_head = ?, chain_length = ?').run(before, rows.length)
}
