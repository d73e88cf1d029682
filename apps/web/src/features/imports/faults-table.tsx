import type { ImportRun } from '@glandkeeper/contract/imports'
import { counted, formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import css from './imports.module.css'

export function FaultsTable({ run }: { run: ImportRun }) {
  const hidden = run.faultCount - run.faults.length
  return (
    <section className={css.section}>
      <h2>{counted(run.faultCount, 'fault')} found</h2>
      <table className={`${page.table} ${css.faults}`} aria-label="Faults by row and column">
        <thead>
          <tr>
            <th scope="col" className={page.figure}>
              Row
            </th>
            <th scope="col">Column</th>
            <th scope="col">It says</th>
            <th scope="col">What is wrong</th>
          </tr>
        </thead>
        <tbody>
          {run.faults.map((fault) => (
            <tr key={`${fault.row} ${fault.column} ${fault.detail}`}>
              <td className={page.figure}>{fault.row}</td>
              <td>{fault.column}</td>
              <td className={css.value}>{fault.value === '' ? <i className="soft">nothing</i> : fault.value}</td>
              <td>{fault.detail}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {hidden > 0 && <p className="soft">And {formatCount(hidden)} more: the file of bad rows has them all.</p>}
    </section>
  )
}
