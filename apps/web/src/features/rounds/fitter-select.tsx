import { useQuery } from '@tanstack/react-query'
import { people } from '../people/queries.ts'

interface FitterSelectProps {
  /** Empty is whoever has time. */
  value: string
  onChange: (personId: string) => void
}

/** Who walks a round: anybody of the site who has not left. */
export function FitterSelect({ value, onChange }: FitterSelectProps) {
  const staff = useQuery(people)
  return (
    <label>
      Fitter
      <select value={value} onChange={({ target }) => onChange(target.value)}>
        <option value="">whoever has time</option>
        {staff.data?.people
          .filter(({ leftAt }) => leftAt === null)
          .map((person) => (
            <option key={person.personId} value={person.personId}>
              {person.name}, {person.role}
            </option>
          ))}
      </select>
    </label>
  )
}
