import { useQuery } from '@tanstack/react-query'
import { siteFamilies } from '../packings/queries.ts'
import look from './pad.module.css'

/** A kind of packing by the name the site has for it. A name nobody lists any more stays what it is. */
export function FamilySelect({ value, onChange }: { value: string; onChange: (family: string) => void }) {
  const known = useQuery(siteFamilies)
  const families = new Set(['unknown', ...(known.data?.families.map(({ name }) => name) ?? []), 'other', value])
  return (
    <label className={look.kind}>
      <span>Family</span>
      <select value={value} onChange={({ target }) => onChange(target.value)}>
        {[...families].map((family) => (
          <option key={family}>{family}</option>
        ))}
      </select>
    </label>
  )
}
