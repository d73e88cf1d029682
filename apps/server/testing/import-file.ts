import { applyImport, type ImportKind, type ImportRun, showImport, startImport } from '@glandkeeper/contract/imports'
import type { TestServer } from './a-server.ts'

/** A file sent and read through, as a planner does before bringing it in. */
export async function checked(server: TestServer, kind: ImportKind, file: string | Uint8Array<ArrayBuffer>): Promise<ImportRun> {
  const body = typeof file === 'string' ? new TextEncoder().encode(file) : file
  const { importId } = await server.expectOk('planner', startImport, { query: { kind, fileName: 'list.csv' }, body })
  await server.imports.idle()
  return server.expectOk('planner', showImport, { params: { importId } })
}

/** What was read, brought in. */
export async function applied(server: TestServer, { importId }: ImportRun, mode: 'whole file' | 'good rows'): Promise<ImportRun> {
  await server.expectOk('planner', applyImport, { params: { importId }, body: { mode } })
  await server.imports.idle()
  return server.expectOk('planner', showImport, { params: { importId } })
}
