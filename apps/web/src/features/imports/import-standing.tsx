import { badRowsOfImport, type ImportRun } from '@glandkeeper/contract/imports'
import { Link } from 'react-router'
import { addressOf } from '../../platform/client.ts'
import { counted, formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { asSentence } from '../../ui/sentence.ts'
import css from './imports.module.css'
import { isUnderWay, useImportActs } from './queries.ts'

/** Where the import stands, in a sentence with figures, and what may be done now. */
export function ImportStanding({ run }: { run: ImportRun }) {
  const acts = useImportActs(run.importId)
  const refusal = acts.apply.error ?? acts.cancel.error
  const isBusy = acts.apply.isPending || acts.cancel.isPending
  return (
    <section className={css.section} aria-label="Where the import stands">
      <p role="status" className={css.standing}>
        {standingInWords(run)}
      </p>
      {run.detail !== '' && <p>{asSentence(run.detail)}</p>}
      {isUnderWay(run.step) && <Progress run={run} />}
      {refusal && <ProblemNote error={refusal} />}
      <div className={page.acts}>
        {run.step === 'checked' && <ApplyButton run={run} isBusy={isBusy} onApply={(mode) => acts.apply.mutate(mode)} />}
        {(run.step === 'checked' || run.step === 'unreadable' || isUnderWay(run.step)) && (
          <button type="button" disabled={isBusy} onClick={() => acts.cancel.mutate()}>
            Cancel the import
          </button>
        )}
        {run.badCount > 0 && !isUnderWay(run.step) && (
          <a href={addressOf(badRowsOfImport, { params: { importId: run.importId } })} download>
            Download the {counted(run.badCount, 'bad row')} with reasons
          </a>
        )}
        {run.step === 'done' && <Link to="/">Look at the board</Link>}
      </div>
    </section>
  )
}

interface ApplyButtonProps {
  run: ImportRun
  isBusy: boolean
  onApply: (mode: 'whole file' | 'good rows') => void
}

function ApplyButton({ run, isBusy, onApply }: ApplyButtonProps) {
  if (run.goodCount === 0) return null
  const mode = run.badCount === 0 ? 'whole file' : 'good rows'
  return (
    <button type="button" className="main" disabled={isBusy} onClick={() => onApply(mode)}>
      {mode === 'whole file' ? 'Import the whole file' : `Import the ${counted(run.goodCount, 'good row')}`}
    </button>
  )
}

function standingInWords(run: ImportRun): string {
  const good = formatCount(run.goodCount)
  switch (run.step) {
    case 'checking':
      return `Checking: ${counted(run.rowCount, 'row')} read so far.`
    case 'checked':
      return `${counted(run.rowCount, 'row')} read: ${good} good, ${formatCount(run.badCount)} with faults. Nothing is written yet.`
    case 'writing':
      return `Writing: ${formatCount(run.doneCount)} of ${counted(run.goodCount, 'row')}.`
    case 'done':
      return `${counted(run.doneCount, 'row')} imported${run.alreadyCount > 0 ? `, ${formatCount(run.alreadyCount)} of them there already` : ''}${run.badCount > 0 ? `; ${formatCount(run.badCount)} with faults left out` : ''}.`
    case 'unreadable':
      return 'The file cannot be read as a table.'
    case 'cancelled':
      return run.doneCount === 0 ? 'Cancelled.' : `Cancelled. ${counted(run.doneCount, 'row')} had been written before, and stay.`
    case 'failed':
      return `The import stopped. ${counted(run.doneCount, 'row')} had been written.`
  }
}

/** While checking nobody knows how many rows there are, so the bar only moves when rows are written. */
function Progress({ run }: { run: ImportRun }) {
  if (run.step === 'checking') return <progress className={css.progress} aria-label="Checking the file" />
  return <progress className={css.progress} aria-label="Writing rows" value={run.doneCount} max={Math.max(run.goodCount, 1)} />
}
