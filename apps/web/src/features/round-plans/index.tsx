import { useQuery } from '@tanstack/react-query'
import { Link } from 'react-router'
import { visitsOfValve } from './queries.ts'
import { whyInWords } from './reason-words.ts'
import { weekInWords } from './week-words.ts'

const MOST_NAMED = 4

/** The next looks the plan of rounds has for a valve, with the reason for each week; nothing where none is planned. */
export function PlannedLooks({ tag }: { tag: string }) {
  const visits = useQuery(visitsOfValve(tag))
  const named = visits.data?.visits.slice(0, MOST_NAMED) ?? []
  if (named.length === 0) return null
  return (
    <section aria-labelledby="planned">
      <h2 id="planned">Planned looks</h2>
      <ul>
        {named.map((visit) => (
          <li key={`${visit.dueWeekOf} ${visit.weekOf ?? ''}`}>
            <b>{visit.weekOf === null ? 'In no week' : weekInWords(visit.weekOf)}</b>
            {visit.crewName !== null && `, ${visit.crewName}`}. <span className="soft">{whyInWords(visit)}</span>
          </li>
        ))}
      </ul>
      <Link to="/rounds/plan">Plan of rounds</Link>
    </section>
  )
}
