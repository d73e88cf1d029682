/** The PostgreSQL schema from the one written by hand: another provider, another folder for the client. */
export function derivePostgresql(schema) {
  return (
    '// Derived from ../schema.prisma by `npm run db:new`: do not edit.\n' +
    schema
      .replace('provider = "sqlite"', 'provider = "postgresql"')
      .replace('"../apps/server/src/generated/sqlite"', '"../../apps/server/src/generated/postgresql"')
  )
}
