import type { Prisma } from '../generated/sqlite/client.ts'

/** Tables that files fill by the thousand. Columns are the fields in snake case, as in the whole schema. */
export type BulkTable =
  | 'valve'
  | 'valve_state'
  | 'event'
  | 'register_change'
  | 'forecast_made'
  | 'planned_visit'
  | 'planned_repack'
  | 'leak'
export type BulkRow = Readonly<Record<string, string | number | boolean | Date | null>>

/**
 * Many rows in one statement with one parameter, a JSON array. Prisma's createMany carries every value as a
 * parameter of its own, which takes ten times as long for wide rows and holds other requests up meanwhile.
 */
export async function insertRows(
  tx: Pick<Prisma.TransactionClient, '$executeRawUnsafe'>,
  provider: 'sqlite' | 'postgresql',
  table: BulkTable,
  rows: readonly BulkRow[],
): Promise<void> {
  const first = rows[0]
  if (!first) return
  const fields = Object.keys(first)
  const columns = fields.map((field) => `"${columnOf(field)}"`).join(', ')
  if (provider === 'sqlite') {
    const values = fields.map((field) => `value ->> '${field}'`).join(', ')
    const json = JSON.stringify(
      rows.map((row) => Object.fromEntries(Object.entries(row).map(([field, value]) => [field, storedBySqlite(value)]))),
    )
    await tx.$executeRawUnsafe(`INSERT INTO "${table}" (${columns}) SELECT ${values} FROM json_each(?)`, json)
    return
  }
  const json = JSON.stringify(
    rows.map((row) => Object.fromEntries(Object.entries(row).map(([field, value]) => [columnOf(field), value]))),
  )
  await tx.$executeRawUnsafe(
    `INSERT INTO "${table}" (${columns}) SELECT ${columns} FROM jsonb_populate_recordset(NULL::"${table}", $1::jsonb)`,
    json,
  )
}

function columnOf(field: string): string {
  return field.replaceAll(/[A-Z]/g, (capital) => `_${capital.toLowerCase()}`)
}

/** As Prisma's adapter writes them, so that rows from both roads compare. */
function storedBySqlite(value: BulkRow[string]): BulkRow[string] {
  return value instanceof Date ? value.toISOString().replace('Z', '+00:00') : value
}
