import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { registerKeepers } from './roles.ts'
import { count } from './quantity.ts'
import { text } from './text.ts'

export const ImportKind = z.enum(['valves', 'history'])
export type ImportKind = z.infer<typeof ImportKind>

/**
 * `checking` → `checked` → `writing` → `done`; or `unreadable`, `cancelled`, `failed`.
 * `writing` goes back to `checked` when the register changed so that a whole file has faults it did not have.
 */
export const ImportStep = z.enum(['checking', 'checked', 'writing', 'done', 'unreadable', 'cancelled', 'failed'])
export type ImportStep = z.infer<typeof ImportStep>

const rows = count('Rows', 0, 10_000_000)

export const RowFault = z.object({
  /** The line in the file, as a spreadsheet counts it: the headings are row 1. */
  row: rows,
  column: z.string(),
  /** The first 100 letters of the cell. */
  value: z.string(),
  detail: z.string(),
})
export type RowFault = z.infer<typeof RowFault>

/** How one heading of the file is read. `field` null: the column is left out. */
export const ColumnReading = z.object({ heading: z.string(), field: z.string().nullable(), unit: z.string().nullable() })
export type ColumnReading = z.infer<typeof ColumnReading>

export const ImportRun = z.object({
  importId: z.uuid(),
  kind: ImportKind,
  fileName: z.string(),
  step: ImportStep,
  startedAt: z.iso.datetime(),
  by: z.string(),
  columns: z.array(ColumnReading),
  rowCount: rows,
  goodCount: rows,
  badCount: rows,
  /** Rows written so far, new or already there. */
  doneCount: rows,
  /** Of the rows written, those that were in the register already, unchanged. */
  alreadyCount: rows,
  /** The first faults; the file of bad rows has all of them. In the list of imports they are left out. */
  faults: z.array(RowFault),
  faultCount: rows,
  detail: z.string(),
})
export type ImportRun = z.infer<typeof ImportRun>

const byId = z.strictObject({ importId: z.uuid() })

export const listImports = endpoint({
  method: 'GET',
  path: '/api/imports',
  who: registerKeepers,
  ok: z.object({ imports: z.array(ImportRun) }),
  status: 200,
})

/** The body is the file itself. The answer comes at once; the check goes on and is asked for by id. */
export const startImport = endpoint({
  method: 'POST',
  path: '/api/imports',
  who: registerKeepers,
  query: z.strictObject({ kind: ImportKind, fileName: text(200, 1) }),
  body: z.instanceof(Uint8Array),
  bodyKind: 'csv',
  ok: ImportRun,
  status: 202,
})

export const showImport = endpoint({
  method: 'GET',
  path: '/api/imports/:importId',
  who: registerKeepers,
  params: byId,
  ok: ImportRun,
  status: 200,
})

/** Says how headings are to be read, and checks the file again. */
export const mapImport = endpoint({
  method: 'PUT',
  path: '/api/imports/:importId/columns',
  who: registerKeepers,
  params: byId,
  body: z.strictObject({
    columns: z.array(z.strictObject({ heading: z.string(), field: text(60).nullable(), unit: text(20).nullable() })).max(1000),
  }),
  ok: ImportRun,
  status: 202,
})

export const applyImport = endpoint({
  method: 'POST',
  path: '/api/imports/:importId/apply',
  who: registerKeepers,
  params: byId,
  /**
   * `whole file` writes every row or, when one has a fault, none; `good rows` leaves the bad ones for a file of their own.
   * A whole file of more than 5,000 rows is written in portions, and what a person cancels in between stays written.
   */
  body: z.strictObject({ mode: z.enum(['whole file', 'good rows']) }),
  ok: ImportRun,
  status: 202,
})

export const cancelImport = endpoint({
  method: 'POST',
  path: '/api/imports/:importId/cancel',
  who: registerKeepers,
  params: byId,
  ok: ImportRun,
  status: 200,
})

/** The bad rows as they came, with a last column that says why. */
export const badRowsOfImport = endpoint({
  method: 'GET',
  path: '/api/imports/:importId/bad-rows.csv',
  who: registerKeepers,
  params: byId,
  ok: z.string(),
  okKind: 'csv',
  status: 200,
})
