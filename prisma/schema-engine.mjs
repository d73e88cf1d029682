// Drives Prisma's own schema engine in its WASM build, so that no binary has to be downloaded.
// Used to write migrations (scripts/db-new.mjs) and to prove that none is missing (drift test).
import { readFile, readdir } from 'node:fs/promises'
import { existsSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import { randomUUID } from 'node:crypto'
import {
  bindMigrationAwareSqlAdapterFactory,
  ColumnTypeEnum,
  mockAdapter,
  mockMigrationAwareAdapterFactory,
} from '@prisma/driver-adapter-utils'
import * as binding from '@prisma/schema-engine-wasm/schema_engine_bg'

const require = createRequire(import.meta.url)
const NO_FILTERS = { externalTables: [], externalEnums: [] }
const EMPTY = '-- This is an empty migration.'

/** The SQL that turns one schema into another, without any database. `from` null: from nothing. */
export async function sqlBetween(provider, from, to) {
  const engine = await engineOn(provider === 'sqlite' ? await sqliteFactory(':memory:') : postgresWithoutDatabase())
  const source = from === null ? { tag: 'empty' } : asDatamodel(from)
  return statements(await engine.diff({ from: source, to: asDatamodel(to), script: true, exitCode: true, filters: NO_FILTERS }))
}

/** The SQL still missing between all migrations of a folder, applied to a fresh database, and the schema. Empty: no drift. */
export async function driftOf(provider, folder, schema, url) {
  const engine = await engineOn(provider === 'sqlite' ? await sqliteFactory(':memory:') : await postgresFactory(url))
  const from = { tag: 'migrations', ...(await migrationList(provider, folder)) }
  return statements(await engine.diff({ from, to: asDatamodel(schema), script: true, exitCode: true, filters: NO_FILTERS }))
}

function statements({ stdout }) {
  return stdout.trim() === EMPTY ? '' : stdout
}

function asDatamodel(content) {
  return { tag: 'schemaDatamodel', files: [{ path: '/schema.prisma', content }] }
}

let started

async function engineOn(factory) {
  started ??= startWasm() // once: a second instance would overwrite the memory the first one works in
  await started
  return binding.SchemaEngine.new({ datamodels: undefined }, () => {}, bindMigrationAwareSqlAdapterFactory(factory))
}

async function startWasm() {
  const folder = path.dirname(require.resolve('@prisma/schema-engine-wasm/schema_engine_bg'))
  const compiled = await WebAssembly.compile(await readFile(path.join(folder, 'schema_engine_bg.wasm')))
  const wasm = await WebAssembly.instantiate(compiled, { './schema_engine_bg.js': binding })
  binding.__wbg_set_wasm(wasm.exports)
  wasm.exports.__wbindgen_start()
}

async function migrationList(provider, folder) {
  const names = existsSync(folder)
    ? (await readdir(folder, { withFileTypes: true }))
        .filter((entry) => entry.isDirectory())
        .map((entry) => entry.name)
        .toSorted()
    : []
  const read = async (name) => ({
    path: name,
    migrationFile: {
      path: 'migration.sql',
      content: { tag: 'ok', value: await readFile(path.join(folder, name, 'migration.sql'), 'utf8') },
    },
  })
  return {
    baseDir: path.resolve(folder),
    shadowDbInitScript: '',
    lockfile: { path: 'migration_lock.toml', content: `provider = "${provider}"\n` },
    migrationDirectories: await Promise.all(names.map(read)),
  }
}

async function sqliteFactory(url) {
  const { PrismaBetterSqlite3 } = await import('@prisma/adapter-better-sqlite3')
  const factory = new PrismaBetterSqlite3({ url })
  factory.connectToShadowDb = async () => {
    const adapter = await new PrismaBetterSqlite3({ url: ':memory:' }).connect()
    const one = adapter.executeRaw.bind(adapter)
    // The adapter takes one statement here, the engine sends whole scripts.
    adapter.executeRaw = async (query) => (query.args.length === 0 ? (await adapter.executeScript(query.sql), 0) : one(query))
    return adapter
  }
  return factory
}

/** Mends four faults of the adapter in 7.10: scripts split at every `;`, the shadow is the main database,
 * `"char"` is unknown, and PostgreSQL 18 has constraints the engine does not know. */
async function postgresFactory(url) {
  const { PrismaPg } = await import('@prisma/adapter-pg')
  const at = new URL(url)
  const server = { host: at.hostname, port: Number(at.port || 5432), user: at.username, password: at.password }
  const open = async (database) => {
    const adapter = await new PrismaPg({ ...server, database }).connect()
    const pool = adapter.underlyingDriver()
    const query = pool.query.bind(pool)
    pool.query = async (...args) => {
      const result = await query(...args)
      for (const part of [result].flat()) presentableCatalogue(part)
      return result
    }
    adapter.executeScript = async (sql) => void (await query(sql))
    return adapter
  }
  const factory = new PrismaPg(server)
  factory.connect = () => open(at.pathname.slice(1))
  factory.connectToShadowDb = async () => {
    const name = `shadow_${randomUUID().replaceAll('-', '')}`
    const admin = await open(at.pathname.slice(1))
    await admin.executeScript(`CREATE DATABASE "${name}"`)
    const adapter = await open(name)
    const dispose = adapter.dispose.bind(adapter)
    adapter.dispose = async () => {
      await dispose()
      await admin.executeScript(`DROP DATABASE "${name}"`)
      await admin.dispose()
    }
    return adapter
  }
  return factory
}

/** PostgreSQL 18 lists NOT NULL among the constraints, which the engine does not expect; `"char"` (oid 18) it reads as text. */
function presentableCatalogue(result) {
  const constraint = (result.fields ?? []).findIndex((field) => field.name === 'constraint_type')
  if (constraint >= 0) result.rows = result.rows.filter((row) => row[constraint] !== 'n')
  for (const field of result.fields ?? []) if (field.dataTypeID === 18) field.dataTypeID = 25
}

/** Two schemas can be compared without a server: the engine only asks for its version. */
function postgresWithoutDatabase() {
  const connect = async () => ({
    ...mockAdapter('postgres'),
    getConnectionInfo: () => ({ schemaName: 'public', supportsRelationJoins: true }),
    dispose: async () => {},
    queryRaw: async () => ({
      columnNames: ['namespace_exists', 'version', 'numeric_version'],
      columnTypes: [ColumnTypeEnum.Boolean, ColumnTypeEnum.Text, ColumnTypeEnum.Int32],
      rows: [[true, 'PostgreSQL 15', 150000]],
    }),
    executeRaw: async () => 0,
    executeScript: async () => {},
  })
  return { ...mockMigrationAwareAdapterFactory('postgres'), connect, connectToShadowDb: connect }
}
