import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'
import { Link, useParams } from 'react-router'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { ForRegisterKeepers } from '../people/index.tsx'
import { ColumnsTable } from './columns-table.tsx'
import { FaultsTable } from './faults-table.tsx'
import { ImportStanding } from './import-standing.tsx'
import { kindInWords } from './import-words.ts'
import { importRun } from './queries.ts'

export function ImportPage() {
  const { importId = '' } = useParams()
  return (
    <ForRegisterKeepers>
      <main className={page.page}>
        <OneImport importId={importId} />
      </main>
    </ForRegisterKeepers>
  )
}

function OneImport({ importId }: { importId: string }) {
  const known = useQuery(importRun(importId))
  const run = known.data
  useReadRegisterAgain(run?.step === 'done')
  if (run === undefined) {
    return known.error ? (
      <ProblemNote error={known.error} again={{ words: 'Read the import again', onPress: () => void known.refetch() }} />
    ) : (
      <p role="status">Reading the import</p>
    )
  }
  return (
    <>
      <title>{`Import of ${run.fileName} · Glandkeeper`}</title>
      <div className={page.title}>
        <h1>{run.fileName}</h1>
        <span className="soft">{kindInWords[run.kind]}</span>
        <Link to="/imports">All imports</Link>
      </div>
      <ImportStanding run={run} />
      {run.faults.length > 0 && <FaultsTable run={run} />}
      {run.columns.length > 0 && <ColumnsTable key={JSON.stringify(run.columns)} run={run} />}
    </>
  )
}

/** What was imported shows on the board and in the areas. */
function useReadRegisterAgain(isDone: boolean) {
  const queries = useQueryClient()
  useEffect(() => {
    if (isDone) void queries.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'imports', refetchType: 'none' })
  }, [isDone, queries])
}
