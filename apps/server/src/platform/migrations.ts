import { createHash, randomUUID } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import type { Clock } from './clock.ts'

interface Migration {
  readonly name: string
  readonly sql: string
  readonly checksum: string
}

interface Applied {
  readonly migration_name: string
  readonly checksum: string
}

const COLUMNS = 'id, checksum, started_at, finished_at, migration_name, applied_steps_count'
const APPLIED = 'SELECT migration_name, checksum FROM _prisma_migrations WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL'

/** Prisma's own table in Prisma's own layout, so that its tools can tell where a register stands. */
const sqliteTable = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" ("id" TEXT PRIMARY KEY NOT NULL, "checksum" TEXT NOT NULL, "finished_at" DATETIME,
  "migration_name" TEXT NOT NULL, "logs" TEXT, "rolled_back_at" DATETIME, "started_at" DATETIME NOT NULL DEFAULT current_timestamp, "applied_steps_count" INTEGER UNSIGNED NOT NULL DEFAULT 0)`
const postgresqlTable = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (id VARCHAR(36) PRIMARY KEY NOT NULL, checksum VARCHAR(64) NOT NULL, finished_at TIMESTAMPTZ,
  migration_name VARCHAR(255) NOT NULL, logs TEXT, rolled_back_at TIMESTAMPTZ, started_at TIMESTAMPTZ NOT NULL DEFAULT now(), applied_steps_count INTEGER NOT NULL DEFAULT 0)`
/** The lock Prisma's own engine takes, so that two servers starting at once do not migrate twice. */
const PRISMA_MIGRATION_LOCK = 72707369

/**
 * Brings a SQLite register up to date: all pending migrations in one transaction, or none.
 *
 * @param folder the `prisma` folder
 * @returns the names of the migrations applied now
 */
export async function migrateSqlite(file: string, folder: string, clock: Clock): Promise<string[]> {
  const { default: Database } = await import('better-sqlite3')
  const database = new Database(file, { timeout: 30_000 })
  try {
    database.pragma('journal_mode = WAL')
    // Outside the transaction, where it has an effect: a rebuilt table would otherwise take its children with it.
    database.pragma('foreign_keys = OFF')
    database.exec('BEGIN IMMEDIATE')
    database.exec(sqliteTable)
    const pending = pendingOf(migrationsIn(path.join(folder, 'migrations')), database.prepare<[], Applied>(APPLIED).all())
    const note = database.prepare(`INSERT INTO _prisma_migrations(${COLUMNS}) VALUES (?, ?, ?, ?, ?, 1)`)
    for (const migration of pending) {
      database.exec(migration.sql)
      note.run(randomUUID(), migration.checksum, clock().toISOString(), clock().toISOString(), migration.name)
    }
    database.exec(readFileSync(path.join(folder, 'append-only.sql'), 'utf8'))
    const orphans = database.pragma('foreign_key_check') as unknown[]
    if (orphans.length > 0) throw new Error(`after migrating, ${orphans.length} rows point at nothing; nothing was changed`)
    database.exec('COMMIT')
    return pending.map((migration) => migration.name)
  } finally {
    if (database.inTransaction) database.exec('ROLLBACK')
    database.close()
  }
}

/** Brings a PostgreSQL register up to date: each pending migration in a transaction of its own. */
export async function migratePostgresql(url: string, folder: string, clock: Clock): Promise<string[]> {
  const { default: pg } = await import('pg')
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    await client.query('SELECT pg_advisory_lock($1)', [PRISMA_MIGRATION_LOCK])
    await client.query(postgresqlTable)
    const applied = await client.query<Applied>(APPLIED)
    const pending = pendingOf(migrationsIn(path.join(folder, 'postgresql/migrations')), applied.rows)
    for (const migration of pending) {
      await client.query('BEGIN')
      await client.query(migration.sql)
      const now = clock().toISOString()
      await client.query(`INSERT INTO _prisma_migrations(${COLUMNS}) VALUES ($1, $2, $3, $3, $4, 1)`, [
        randomUUID(),
        migration.checksum,
        now,
        migration.name,
      ])
      await client.query('COMMIT')
    }
    await client.query(readFileSync(path.join(folder, 'postgresql/append-only.sql'), 'utf8'))
    return pending.map((migration) => migration.name)
  } finally {
    // Ending the connection rolls back what is open and gives the lock back.
    await client.end()
  }
}

function migrationsIn(folder: string): Migration[] {
  const names = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory())
  return names
    .map(({ name }) => {
      const sql = readFileSync(path.join(folder, name, 'migration.sql'), 'utf8')
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') }
    })
    .toSorted((a, b) => (a.name < b.name ? -1 : 1))
}

function pendingOf(known: readonly Migration[], applied: readonly Applied[]): Migration[] {
  const byName = new Map(known.map((migration) => [migration.name, migration]))
  for (const { migration_name: name, checksum } of applied) {
    const migration = byName.get(name)
    if (!migration) throw new Error(`the register holds migration ${name}, which this build does not know: start the newer build`)
    if (migration.checksum !== checksum) throw new Error(`migration ${name} was edited after it was applied`)
  }
  const done = new Set(applied.map((row) => row.migration_name))
  return known.filter((migration) => !done.has(migration.name))
}
