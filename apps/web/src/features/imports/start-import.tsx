import { entryWords, headingOf, importColumns } from '@glandkeeper/contract/import-columns'
import { ImportKind } from '@glandkeeper/contract/imports'
import { useState, type SubmitEvent } from 'react'
import { useNavigate } from 'react-router'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { templateOf } from './column-readings.ts'
import css from './imports.module.css'
import { kindInWords } from './import-words.ts'
import { useStartImport } from './queries.ts'

const explanations: Readonly<Record<ImportKind, string>> = {
  valves:
    'One row for each valve. A tag already in the register is changed in the columns the file has, and in no other; an area not yet there is added.',
  history: `One row for each thing done or seen at a valve; the column “what” says which: ${Object.keys(entryWords).join(', ')}. The valves must be in the register before; rows imported earlier are found and not written twice.`,
}

export function StartImport() {
  const [kind, setKind] = useState<ImportKind>('valves')
  const [file, setFile] = useState<File | null>(null)
  const start = useStartImport()
  const navigate = useNavigate()
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    if (file) start.mutate({ kind, file }, { onSuccess: ({ importId }) => void navigate(`/imports/${importId}`) })
  }
  return (
    <form onSubmit={submit} className={css.start}>
      <fieldset className={css.kinds}>
        <legend>What is in the file</legend>
        {ImportKind.options.map((option) => (
          <label key={option}>
            <input type="radio" name="kind" checked={kind === option} onChange={() => setKind(option)} /> {kindInWords[option]}
          </label>
        ))}
      </fieldset>
      <Explanation kind={kind} />
      <label className={css.file}>
        <span>File (CSV, UTF-8, headings in the first line)</span>
        <input type="file" accept=".csv,text/csv" onChange={(event) => setFile(event.target.files?.[0] ?? null)} />
      </label>
      {start.error && <ProblemNote error={start.error} />}
      <button type="submit" className="main" disabled={file === null || start.isPending}>
        {start.isPending ? 'Sending the file' : 'Send and check the file'}
      </button>
      <p className="soft">Nothing is written before you have seen what was found.</p>
    </form>
  )
}

function Explanation({ kind }: { kind: ImportKind }) {
  const needed = importColumns[kind].filter(({ required }) => required).map(headingOf)
  return (
    <div className={css.explanation}>
      <p>
        {explanations[kind]} Needed columns: {needed.join(', ')}. All others may be missing, and columns nobody knows are left
        out. A heading may name its unit in brackets: box bore [in].
      </p>
      <p>
        <a
          href={`data:text/csv;charset=utf-8,${encodeURIComponent(templateOf(kind))}`}
          download={`${kindInWords[kind]} headings.csv`}
        >
          Download the headings as an empty file
        </a>
      </p>
    </div>
  )
}
