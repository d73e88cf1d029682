import type { ImportRun } from '@glandkeeper/contract/imports'
import { useQuery } from '@tanstack/react-query'
import { Link } from 'react-router'
import { formatMoment } from '../../platform/site-time.ts'
import { formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { ForRegisterKeepers, useMe } from '../people/index.tsx'
import css from './imports.module.css'
import { kindInWords, stepInWords } from './import-words.ts'
import { imports } from './queries.ts'
import { StartImport } from './start-import.tsx'

export function ImportsPage() {
  return (
    <ForRegisterKeepers>
      <main className={page.page}>
        <title>Imports · Glandkeeper</title>
        <h1>Import a list</h1>
        <StartImport />
        <section className={css.section}>
          <h2>Earlier imports</h2>
          <EarlierImports />
        </section>
      </main>
    </ForRegisterKeepers>
  )
}

function EarlierImports() {
  const known = useQuery(imports)
  if (known.data === undefined) {
    return known.error ? (
      <ProblemNote error={known.error} again={{ words: 'Read the list again', onPress: () => void known.refetch() }} />
    ) : (
      <p role="status">Reading the list</p>
    )
  }
  if (known.data.imports.length === 0) return <p className="soft">None yet.</p>
  return (
    <ul className={css.earlier}>
      {known.data.imports.map((run) => (
        <Earlier key={run.importId} run={run} />
      ))}
    </ul>
  )
}

function Earlier({ run }: { run: ImportRun }) {
  const { timeZone } = useMe().site
  return (
    <li>
      <Link to={`/imports/${run.importId}`}>{run.fileName}</Link>
      <span>
        {kindInWords[run.kind]}, {stepInWords[run.step]}
      </span>
      <span className="let">
        {formatCount(run.doneCount)} of {formatCount(run.rowCount)} rows
      </span>
      <span className="soft">
        {formatMoment(run.startedAt, timeZone)}, {run.by}
      </span>
    </li>
  )
}
