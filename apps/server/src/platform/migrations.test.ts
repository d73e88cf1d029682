import { readFileSync } from 'node:fs'
import path from 'node:path'
import Database from 'better-sqlite3'
import pg from 'pg'
import { describe, expect, inject, it } from 'vitest'
import { driftOf } from '../../../../prisma/schema-engine.mjs'
import { derivePostgresql } from '../../../../prisma/derive-postgresql.mjs'
import { aCopy } from '../../testing/a-store.ts'
import { systemClock } from './clock.ts'
import { migratePostgresql, migrateSqlite } from './migrations.ts'

const prisma = path.resolve(import.meta.dirname, '../../../../prisma')
const { provider } = inject('database')
const written = readFileSync(path.join(prisma, 'schema.prisma'), 'utf8')

async function run(url: string, sql: string): Promise<Record<string, unknown>[]> {
  if (provider === 'sqlite') {
    const database = new Database(url.slice('file:'.length))
    try {
      const statement = database.prepare(sql)
      return statement.reader ? (statement.all() as Record<string, unknown>[]) : (statement.run(), [])
    } finally {
      database.close()
    }
  }
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    return (await client.query<Record<string, unknown>>(sql)).rows
  } finally {
    await client.end()
  }
}

const migrate = (url: string) =>
  provider === 'sqlite'
    ? migrateSqlite(url.slice('file:'.length), prisma, systemClock)
    : migratePostgresql(url, prisma, systemClock)

const insertSite = `INSERT INTO site(id, name, time_zone, created_at)
  VALUES ('s', 'S', 'Europe/London', '2026-01-01T00:00:00.000Z')`
const insertPerson = `INSERT INTO person(id, site_id, name, sign_in_name, role, password_hash, created_at)
  VALUES ('p', 's', 'P', 'p', 'fitter', '', '2026-01-01T00:00:00.000Z')`
const insertChange = `INSERT INTO register_change(id, site_id, at, person_id, subject, subject_id, what, before, after)
  VALUES ('c', 's', '2026-01-01T00:00:00.000Z', 'p', 'valve', 'v', 'added', '{}', '{}')`
const insertPhoto = `INSERT INTO photo(site_id, digest, type, width, height, content, thumbnail, person_id, received_at)
  VALUES ('s', 'd', 'image/jpeg', 1, 1, '', '', 'p', '2026-01-01T00:00:00.000Z')`

describe('migrations', () => {
  it('leave nothing between themselves and the schema', async () => {
    const folder = path.join(prisma, provider === 'sqlite' ? 'migrations' : 'postgresql/migrations')
    const schema = provider === 'sqlite' ? written : derivePostgresql(written)
    // Its own connection stays on the server's database, not on the one other tests copy.
    const admin = inject('database').base.replace(/\/base$/, '/postgres')
    expect(await driftOf(provider, folder, schema, admin)).toBe('')
  })

  it('derive the PostgreSQL schema from the one written by hand', () => {
    expect(readFileSync(path.join(prisma, 'postgresql/schema.prisma'), 'utf8')).toBe(derivePostgresql(written))
  })

  it('apply nothing the second time', async () => {
    expect(await migrate(await aCopy())).toEqual([])
  })

  it('refuse a register from a newer build, and one whose migration was edited', async () => {
    const newer = await aCopy()
    await run(
      newer,
      `INSERT INTO _prisma_migrations(id, checksum, migration_name, finished_at, applied_steps_count)
        VALUES ('x', 'y', '99990101000000_later', '2026-01-01', 1)`,
    )
    await expect(migrate(newer)).rejects.toThrow('99990101000000_later, which this build does not know')
    const edited = await aCopy()
    await run(edited, `UPDATE _prisma_migrations SET checksum = 'other'`)
    await expect(migrate(edited)).rejects.toThrow('was edited after it was applied')
  })
})

describe('facts and register changes', () => {
  it('cannot be altered or removed in the database', async () => {
    const url = await aCopy()
    for (const sql of [insertSite, insertPerson, insertChange, insertPhoto]) await run(url, sql)
    await expect(run(url, `UPDATE register_change SET what = 'nothing'`)).rejects.toThrow('append-only')
    await expect(run(url, `DELETE FROM register_change`)).rejects.toThrow('append-only')
    await expect(run(url, `UPDATE photo SET thumbnail = content`)).rejects.toThrow('append-only')
    await expect(run(url, `DELETE FROM photo`)).rejects.toThrow('append-only')
    await expect(eventAttempt(url, 'UPDATE event SET body = body')).rejects.toThrow('append-only')
    await expect(eventAttempt(url, 'DELETE FROM event')).rejects.toThrow('append-only')
  })

  it('are guarded again after a migration that rebuilt their tables', async () => {
    const url = await aCopy()
    for (const sql of [insertSite, insertPerson, insertChange]) await run(url, sql)
    await expect(eventAttempt(url, 'DELETE FROM event')).rejects.toThrow('append-only')
    for (const table of ['event', 'register_change']) await rebuild(url, table)
    await run(url, `UPDATE event SET body = 'forged'`)
    await migrate(url)
    await expect(run(url, `UPDATE event SET body = 'again'`)).rejects.toThrow('append-only')
    await expect(run(url, `DELETE FROM register_change`)).rejects.toThrow('append-only')
  })
})

/** As Prisma rebuilds a table on SQLite: its triggers are gone after that. On PostgreSQL somebody has to drop them. */
async function rebuild(url: string, table: string): Promise<void> {
  if (provider === 'postgresql') return void (await run(url, `DROP TRIGGER ${table}_append_only ON ${table}`))
  for (const sql of [
    `CREATE TABLE new_${table} AS SELECT * FROM ${table}`,
    'PRAGMA foreign_keys = OFF',
    `DROP TABLE ${table}`,
    `ALTER TABLE new_${table} RENAME TO ${table}`,
  ]) {
    await run(url, sql)
  }
}

/** SQLite's triggers fire for rows, PostgreSQL's for statements: one event makes both speak. */
async function eventAttempt(url: string, sql: string): Promise<unknown> {
  const rows = await run(url, 'SELECT count(*) AS n FROM event')
  if (Number(rows[0]?.['n']) === 0) {
    await run(url, `INSERT INTO area(id, site_id, code, name, walk_position, level) VALUES ('a', 's', 'A', 'A', 1, 0)`)
    await run(
      url,
      `INSERT INTO valve(id, site_id, area_id, tag, search_text, description, walk_position, level, service, fluid, phase, valve_kind, isolation_boundary, isolates_on_line, access, criticality, least_engagement_mm, keep_clear_mm, stud_grade, lubrication, created_at, updated_at)
       VALUES ('v', 's', 'a', 'V-1', 'v', '', 1, 0, 'steam', '', 'steam', 'gate', '', false, 'floor', 'low', 3, 3, 'unknown', 'unknown', '2026-01-01', '2026-01-01')`,
    )
    await run(
      url,
      `INSERT INTO event(id, site_id, position, valve_id, kind, version, taken_at, received_at, person_id, device, body, hash) VALUES ('e', 's', 1, 'v', 'leak.seen', 1, '2026-01-01', '2026-01-01', 'p', 'd', '{}', 'h')`,
    )
  }
  return run(url, sql)
}
