import type { Person } from '@glandkeeper/contract/people'
import type { GlandState, Standing } from '@glandkeeper/contract/reserve'
import type { ValveHistory } from '@glandkeeper/contract/valves'
import { Link } from 'react-router'
import { asSentence } from '../../ui/sentence.ts'
import { keepsRegister } from '../people/index.tsx'
import { NextLookLine } from './next-look.tsx'
import look from './valve-page.module.css'

const acts: Readonly<Record<Standing, string>> = {
  ample: 'Nothing to do before the next look.',
  watch: 'Keep looking at it.',
  book: 'Book a repack.',
  spent: 'Have it repacked.',
}

interface NextStepProps {
  history: ValveHistory
  person: Person
  today: string
}

/** The act, then the reason; when to look again; and the ways to act on it. */
export function NextStep({ history: { valve, state }, person, today }: NextStepProps) {
  const needsHand = state.standing === 'book' || state.standing === 'spent'
  const address = `/valves/${encodeURIComponent(valve.tag)}`
  return (
    <section className={look.next} aria-label="What to do and why">
      <p className={look.why}>
        <b className={needsHand ? 'hot' : undefined}>{acts[state.standing]}</b>{' '}
        {[state.why, ...furtherFindings(state)].map(asSentence).join(' ')}
      </p>
      {valve.retiredAt === null && state.nextLook !== null && <NextLookLine nextLook={state.nextLook} today={today} />}
      <div className={look.acts}>
        {valve.retiredAt === null && (
          <Link to={`${address}/log`} className={look.main}>
            Log an entry
          </Link>
        )}
        <Link to={`/bench?valve=${encodeURIComponent(valve.tag)}`} className={look.act}>
          Bench
        </Link>
        {keepsRegister(person) && (
          <Link to={`${address}/edit`} className={look.act}>
            Edit
          </Link>
        )}
      </div>
    </section>
  )
}

/** The reason often names the first finding already; it is not said twice. */
function furtherFindings({ why, findings }: GlandState): string[] {
  return findings.flatMap(({ detail }) => (why.includes(detail) ? [] : [detail]))
}
