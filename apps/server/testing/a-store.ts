import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { inject, onTestFinished } from 'vitest'
import { openStore, type Store } from '../src/platform/store.ts'

let made = 0
/** PostgreSQL registers of this process that tests have done with, emptied. */
const emptied: string[] = []
/** With more rows than this to delete, a fresh copy is the quicker way to an empty register. */
const MOST_ROWS_TO_DELETE = 5_000

/** A register of its own for one test, on the database this run is for. */
export async function aDatabase(): Promise<string> {
  const { provider, base } = inject('database')
  if (provider === 'sqlite') return aCopy()
  // PostgreSQL takes a third of a second for a copy, and a fiftieth to empty one that was used.
  const name = emptied.pop() ?? (await copyOnPostgresql(base))
  onTestFinished(async () => {
    if (await empty(at(base, name))) emptied.push(name)
    else await drop(base, name)
  })
  return at(base, name)
}

/** The same for a test that alters tables, triggers or the list of migrations, or that begins with what `aCopyToKeep` holds. */
export async function aCopy(of?: string): Promise<string> {
  const { provider, base } = inject('database')
  if (provider === 'sqlite') {
    const folder = mkdtempSync(path.join(tmpdir(), 'glandkeeper-test-'))
    const file = path.join(folder, 'register.db')
    copyFileSync(of?.replace('file:', '') ?? base, file)
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
    return `file:${file}`
  }
  const name = await copyOnPostgresql(base, of)
  onTestFinished(() => drop(base, name))
  return at(base, name)
}

/** A register that outlives its test, to be filled once and copied by others when nobody has it open; gone with the run. */
export async function aCopyToKeep(): Promise<string> {
  const { provider, base } = inject('database')
  if (provider === 'postgresql') return at(base, await copyOnPostgresql(base))
  made += 1
  const file = path.join(path.dirname(base), `kept-${process.pid}-${made}.db`)
  copyFileSync(base, file)
  return `file:${file}`
}

export async function aStore(url?: string): Promise<Store> {
  const store = await openStore(url ?? (await aDatabase()))
  onTestFinished(() => store.close())
  return store
}

async function copyOnPostgresql(base: string, of = base): Promise<string> {
  made += 1
  const name = `test_${process.pid}_${made}`
  await connected(at(base, 'postgres'), (admin) =>
    admin.query(`CREATE DATABASE ${name} TEMPLATE ${new URL(of).pathname.slice(1)}`),
  )
  return name
}

async function drop(base: string, name: string): Promise<void> {
  await connected(at(base, 'postgres'), (admin) => admin.query(`DROP DATABASE ${name} WITH (FORCE)`))
}

/** Deletes every row past the append-only triggers, as only the owner of a database can; false when somebody is still at it. */
function empty(url: string): Promise<boolean> {
  return connected(url, async (client) => {
    const { rows } = await client.query<{ others: number; rows: number }>(
      `SELECT (SELECT count(*)::int FROM pg_stat_activity WHERE datname = current_database() AND pid <> pg_backend_pid()) AS others,
              (SELECT coalesce(sum(n_live_tup), 0)::int FROM pg_stat_user_tables) AS rows`,
    )
    const [found] = rows
    if (!found || found.others > 0 || found.rows > MOST_ROWS_TO_DELETE) return false
    await client.query(
      `SET session_replication_role = replica;
       DO $$ DECLARE name text; BEGIN
         FOR name IN SELECT tablename FROM pg_tables WHERE schemaname = 'public' AND tablename <> '_prisma_migrations' LOOP
           EXECUTE format('DELETE FROM %I', name);
         END LOOP;
       END $$`,
    )
    return true
  })
}

function at(base: string, name: string): string {
  const url = new URL(base)
  url.pathname = `/${name}`
  return url.href
}

async function connected<Result>(url: string, work: (client: pg.Client) => Promise<Result>): Promise<Result> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}
