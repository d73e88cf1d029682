import { defineConfig } from 'prisma/config'

// `generate` and `validate` never run the schema engine; the command line only checks that such a file is there.
// With this it needs no download. Migrations are made and applied by our own scripts (docs/decisions/0003).
process.env['PRISMA_SCHEMA_ENGINE_BINARY'] ??= process.execPath

export default defineConfig({
  schema: process.env['GLANDKEEPER_SCHEMA'] ?? 'prisma/schema.prisma',
  datasource: { url: process.env['DATABASE_URL'] ?? 'file:./data/glandkeeper.db' },
})
