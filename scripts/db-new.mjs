// npm run db:new NAME: writes the migration between the schema as it was at the last migration and as it is now,
// for SQLite and for PostgreSQL. Read the SQL before you commit it.
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { derivePostgresql } from '../prisma/derive-postgresql.mjs'
import { sqlBetween } from '../prisma/schema-engine.mjs'

const root = path.resolve(import.meta.dirname, '..')
const name = process.argv[2]
if (!name || !/^[a-z0-9-]+$/.test(name)) {
  console.error('usage: npm run db:new NAME   (small letters, digits, hyphens)')
  process.exit(2)
}
const stamp = new Date().toISOString().replaceAll(/\D/g, '').slice(0, 14)
const sqlite = readFileSync(path.join(root, 'prisma/schema.prisma'), 'utf8')
const postgresql = derivePostgresql(sqlite)
mkdirSync(path.join(root, 'prisma/postgresql'), { recursive: true })
writeFileSync(path.join(root, 'prisma/postgresql/schema.prisma'), postgresql)

for (const [provider, folder, schema] of [
  ['sqlite', 'prisma/migrations', sqlite],
  ['postgresql', 'prisma/postgresql/migrations', postgresql],
]) {
  const last = existsSync(path.join(root, folder)) ? readdirSync(path.join(root, folder)).toSorted().at(-1) : undefined
  const before = last ? readFileSync(path.join(root, folder, last, 'schema.prisma'), 'utf8') : null
  const sql = await sqlBetween(provider, before, schema)
  if (sql === '') {
    console.log(`${provider}: nothing changed`)
    continue
  }
  const target = path.join(root, folder, `${stamp}_${name}`)
  mkdirSync(target, { recursive: true })
  writeFileSync(path.join(target, 'migration.sql'), sql)
  // Kept beside the migration, so that the next one can be made without a database.
  writeFileSync(path.join(target, 'schema.prisma'), schema)
  console.log(`${provider}: ${path.relative(root, target)}/migration.sql`)
}
process.exit()
