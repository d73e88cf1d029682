import type { ColumnReading, ImportRun, RowFault } from '@glandkeeper/contract/imports'
import type { Prisma } from '../../generated/sqlite/client.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'

/** Everything but the file itself and its bad rows, which are large. */
const shown = {
  omit: { content: true, badRows: true },
  include: { person: { select: { name: true } } },
} satisfies Prisma.ImportRunDefaultArgs
/** In a list the faults are left out too. */
const listed = { ...shown, omit: { ...shown.omit, faults: true } } satisfies Prisma.ImportRunDefaultArgs
type Row = Prisma.ImportRunGetPayload<typeof shown>

const LISTED = 50

export async function importsOf(read: Read, siteId: string): Promise<ImportRun[]> {
  const rows = await read.importRun.findMany({ ...listed, where: { siteId }, orderBy: { startedAt: 'desc' }, take: LISTED })
  return rows.map((row) => presentImport({ ...row, faults: '[]' }))
}

export async function importWithId(read: Read, siteId: string, importId: string): Promise<ImportRun> {
  const row = await read.importRun.findFirst({ ...shown, where: { siteId, id: importId } })
  if (!row) throw new Refusal('import/unknown', importId)
  return presentImport(row)
}

function presentImport(row: Row): ImportRun {
  const {
    id,
    person,
    kind,
    step,
    startedAt,
    columns,
    faults,
    fileName,
    rowCount,
    goodCount,
    badCount,
    doneCount,
    alreadyCount,
    faultCount,
    detail,
  } = row
  return {
    importId: id,
    kind: kind as ImportRun['kind'],
    step: step as ImportRun['step'],
    by: person.name,
    startedAt: startedAt.toISOString(),
    columns: JSON.parse(columns) as ColumnReading[],
    faults: JSON.parse(faults) as RowFault[],
    fileName,
    rowCount,
    goodCount,
    badCount,
    doneCount,
    alreadyCount,
    faultCount,
    detail,
  }
}
