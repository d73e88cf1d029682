import { RoundInput } from '@glandkeeper/contract/rounds'
import { useQuery } from '@tanstack/react-query'
import { addDays, format } from 'date-fns'
import { type SubmitEvent, useState } from 'react'
import { TextInput } from '../../ui/field.tsx'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { FitterSelect } from './fitter-select.tsx'
import { siteAreas } from '../register/queries.ts'
import { useMakeRound } from './queries.ts'
import look from './rounds.module.css'

const isoDay = (date: Date) => format(date, 'yyyy-MM-dd')

/** Areas, a day and a person: the register knows which of their valves are due. */
export function MakeRound({ onDone }: { onDone: () => void }) {
  const areas = useQuery(siteAreas)
  const making = useMakeRound()
  const [today] = useState(() => new Date())
  const [name, setName] = useState('')
  const [walkOn, setWalkOn] = useState(isoDay(addDays(today, 1)))
  const [fitterId, setFitterId] = useState('')
  const [areaCodes, setAreaCodes] = useState<readonly string[]>([])
  const [dueBy, setDueBy] = useState(isoDay(addDays(today, 7)))
  const [fault, setFault] = useState<string | null>(null)
  const toggle = (code: string) =>
    setAreaCodes(areaCodes.includes(code) ? areaCodes.filter((other) => other !== code) : [...areaCodes, code])
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    const round = {
      name: name.trim() || areaCodes.join(', '),
      walkOn,
      fitterId: fitterId || null,
      areaCodes: [...areaCodes],
      dueBy: dueBy || null,
    }
    const checked = RoundInput.safeParse(round)
    if (areaCodes.length === 0) return setFault('Choose at least one area.')
    if (!checked.success) return setFault(checked.error.issues.map(({ message }) => message).join(' '))
    setFault(null)
    making.mutate(round, { onSuccess: onDone })
  }
  return (
    <form onSubmit={submit} className={look.form} noValidate aria-label="Make a round">
      <TextInput label="Name" hint="empty takes the areas" maxLength={80} value={name} onChange={setName} />
      <label>
        Day of the walk
        <input type="date" value={walkOn} onChange={({ target }) => setWalkOn(target.value)} />
      </label>
      <FitterSelect value={fitterId} onChange={setFitterId} />
      <fieldset>
        <legend>Areas</legend>
        {areas.data?.areas.map((area) => (
          <label key={area.code} className={look.area}>
            <input type="checkbox" checked={areaCodes.includes(area.code)} onChange={() => toggle(area.code)} />
            {area.name}
          </label>
        ))}
      </fieldset>
      <label>
        Valves due for a look by; empty for all
        <input type="date" value={dueBy} onChange={({ target }) => setDueBy(target.value)} />
      </label>
      {fault && <p role="alert">{fault}</p>}
      {making.error && <ProblemNote error={making.error} />}
      <div className={look.acts}>
        <button type="submit" className="main" disabled={making.isPending}>
          Make the round
        </button>
        <button type="button" onClick={onDone}>
          Do not make one
        </button>
      </div>
    </form>
  )
}
