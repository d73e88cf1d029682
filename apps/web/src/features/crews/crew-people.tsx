import { useQuery } from '@tanstack/react-query'
import { people } from '../people/queries.ts'
import css from './crews.module.css'
import { crewsOfSite } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'

interface CrewPeopleProps {
  /** The crew that is changed; null for a new one. */
  crewId: string | null
  chosen: readonly string[]
  onChange: (personIds: string[]) => void
}

/** Check boxes for those who work here. Somebody of another crew leaves it, which is said beside the name. */
export function CrewPeople({ crewId, chosen, onChange }: CrewPeopleProps) {
  const known = useQuery(people)
  const others = useQuery(crewsOfSite).data?.crews.filter((crew) => crew.crewId !== crewId) ?? []
  if (!known.data) return <Reading query={known} things="people" />
  const crewNameOf = (personId: string) => others.find((crew) => crew.people.some((one) => one.personId === personId))?.name
  const toggle = (personId: string) =>
    onChange(chosen.includes(personId) ? chosen.filter((other) => other !== personId) : [...chosen, personId])
  return (
    <fieldset className={css.people}>
      <legend>People; each walks with one crew</legend>
      {known.data.people
        .filter(({ leftAt }) => leftAt === null)
        .map(({ personId, name, role }) => (
          <label key={personId}>
            <input type="checkbox" checked={chosen.includes(personId)} onChange={() => toggle(personId)} />
            <span>
              {name}, <span className="soft">{nowIn(role, crewNameOf(personId))}</span>
            </span>
          </label>
        ))}
    </fieldset>
  )
}

function nowIn(role: string, crewName: string | undefined): string {
  return crewName === undefined ? role : `${role}, now with ${crewName}`
}
