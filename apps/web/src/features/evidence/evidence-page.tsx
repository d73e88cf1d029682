import { Link } from 'react-router'
import page from '../../ui/page.module.css'
import { LeakPages } from '../leaks/index.tsx'
import { CheckFile } from './check-file.tsx'
import css from './evidence.module.css'
import { PublicKey } from './public-key.tsx'
import { TakeOut } from './take-out.tsx'
import { WholeRecord } from './whole-record.tsx'

/** For whoever must show an auditor that nobody changed the record. */
export function EvidencePage() {
  return (
    <main className={page.page}>
      <title>Evidence · Glandkeeper</title>
      <div className={page.title}>
        <h1>Evidence</h1>
        <LeakPages />
      </div>
      <p className="soft">
        What was done at the valves, so that anybody can see that nobody changed it. Who changed the register itself stands in the{' '}
        <Link to="/log">log</Link>.
      </p>
      <div className={css.parts}>
        <div className={css.column}>
          <TakeOut />
          <WholeRecord />
        </div>
        <div className={css.column}>
          <CheckFile />
          <PublicKey />
        </div>
      </div>
    </main>
  )
}
