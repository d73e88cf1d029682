import { importColumns } from '@glandkeeper/contract/import-columns'
import type { ColumnReading, ImportKind, ImportRun } from '@glandkeeper/contract/imports'
import { useState } from 'react'
import { ChoiceInput, choicesOf } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { gapsIn, readAs, unitsFor } from './column-readings.ts'
import css from './imports.module.css'
import { useImportActs } from './queries.ts'

const LEFT_OUT = 'left out'

/** How each heading of the file is read; may be changed until rows are written. */
export function ColumnsTable({ run }: { run: ImportRun }) {
  const [readings, setReadings] = useState<readonly ColumnReading[]>(run.columns)
  const { map } = useImportActs(run.importId)
  const mayChange = run.step === 'checked' || run.step === 'unreadable'
  const isChanged = JSON.stringify(readings) !== JSON.stringify(run.columns)
  return (
    <section className={css.section}>
      <h2>How the columns are read</h2>
      <Gaps kind={run.kind} readings={readings} />
      <table className={`${page.table} ${css.columns}`}>
        <thead>
          <tr>
            <th scope="col">Heading in the file</th>
            <th scope="col">Read as</th>
            <th scope="col">Unit</th>
          </tr>
        </thead>
        <tbody>
          {readings.map((reading, at) => (
            // oxlint-disable-next-line react/no-array-index-key -- columns of a file do not move, and two may share a heading
            <tr key={at}>
              <td>{reading.heading}</td>
              {mayChange ? (
                <Changeable kind={run.kind} reading={reading} onChange={(changed) => setReadings(readings.with(at, changed))} />
              ) : (
                <>
                  <td>{nameOf(run.kind, reading.field) ?? LEFT_OUT}</td>
                  <td>{reading.unit}</td>
                </>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      {map.error && <ProblemNote error={map.error} />}
      {isChanged && (
        <div className={page.acts}>
          <button type="button" disabled={map.isPending} onClick={() => map.mutate([...readings])}>
            Check again with these columns
          </button>
          <button type="button" onClick={() => setReadings(run.columns)}>
            Put the columns back
          </button>
        </div>
      )}
    </section>
  )
}

interface ChangeableProps {
  kind: ImportKind
  reading: ColumnReading
  onChange: (reading: ColumnReading) => void
}

function Changeable({ kind, reading, onChange }: ChangeableProps) {
  const column = importColumns[kind].find(({ field }) => field === reading.field)
  const units = unitsFor(column)
  const fields = importColumns[kind].map(({ field, name, required }) => ({
    value: field,
    words: required ? `${name} (needed)` : name,
  }))
  return (
    <>
      <td>
        <ChoiceInput
          label={`Read “${reading.heading}” as`}
          isLabelHidden
          value={reading.field ?? LEFT_OUT}
          choices={[{ value: LEFT_OUT, words: LEFT_OUT }, ...fields]}
          onChange={(field) => onChange(readAs(reading, field === LEFT_OUT ? null : field, kind))}
        />
      </td>
      <td>
        {units.length > 0 ? (
          <ChoiceInput
            label={`Unit of “${reading.heading}”`}
            isLabelHidden
            value={reading.unit}
            choices={choicesOf(units)}
            onChange={(unit) => onChange({ ...reading, unit })}
          />
        ) : (
          reading.unit
        )}
      </td>
    </>
  )
}

function Gaps({ kind, readings }: { kind: ImportKind; readings: readonly ColumnReading[] }) {
  const { missing, doubled } = gapsIn(kind, readings)
  if (missing.length === 0 && doubled.length === 0) return null
  return (
    <p role="status" className="hot">
      {missing.length > 0 && `Needed and not found: ${missing.join(', ')}. `}
      {doubled.length > 0 && `Read from more than one column: ${doubled.join(', ')}.`}
    </p>
  )
}

function nameOf(kind: ImportKind, field: string | null): string | undefined {
  return importColumns[kind].find((column) => column.field === field)?.name
}
