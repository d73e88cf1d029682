import {
  applyImport,
  cancelImport,
  listImports,
  mapImport,
  showImport,
  startImport,
  type ColumnReading,
  type ImportKind,
  type ImportRun,
  type ImportStep,
} from '@glandkeeper/contract/imports'
import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query'
import { call } from '../../platform/client.ts'

const LOOK_AGAIN_MS = 800

export function isUnderWay(step: ImportStep): boolean {
  return step === 'checking' || step === 'writing'
}

export const imports = queryOptions({
  queryKey: ['imports'],
  queryFn: ({ signal }) => call(listImports, { signal }),
  refetchInterval: ({ state }) => (state.data?.imports.some(({ step }) => isUnderWay(step)) ? LOOK_AGAIN_MS : false),
})

/** Asked again while the server checks or writes, and left alone once it has come to rest. */
export const importRun = (importId: string) =>
  queryOptions({
    queryKey: ['imports', importId],
    queryFn: ({ signal }) => call(showImport, { params: { importId }, signal }),
    refetchInterval: ({ state }) => (state.data && isUnderWay(state.data.step) ? LOOK_AGAIN_MS : false),
  })

export function useStartImport() {
  return useMutation({
    mutationFn: async ({ kind, file }: { kind: ImportKind; file: File }) =>
      call(startImport, { query: { kind, fileName: file.name }, body: new Uint8Array(await file.arrayBuffer()) }),
  })
}

/** Every act answers with the import as it now stands. */
export function useImportActs(importId: string) {
  const queries = useQueryClient()
  const params = { importId }
  const onSuccess = (run: ImportRun) => queries.setQueryData(importRun(importId).queryKey, run)
  return {
    map: useMutation({ mutationFn: (columns: ColumnReading[]) => call(mapImport, { params, body: { columns } }), onSuccess }),
    apply: useMutation({
      mutationFn: (mode: 'whole file' | 'good rows') => call(applyImport, { params, body: { mode } }),
      onSuccess,
    }),
    cancel: useMutation({ mutationFn: () => call(cancelImport, { params }), onSuccess }),
  }
}
