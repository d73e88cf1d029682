import type { PlanBlock, RoundPlan } from '@glandkeeper/contract/round-plans'
import { addDays, format, parseISO } from 'date-fns'
import { useState } from 'react'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { FitterSelect } from '../rounds/index.tsx'
import { useMakeRounds } from './queries.ts'
import { mondayOfWeek } from './week-words.ts'
import css from './round-plans.module.css'

const WORKING_DAYS = [0, 1, 2, 3, 4]

/** Makes the rounds of a walk: on one day or several, each a part of the way, for a fitter or whoever has time. */
export function MakeRounds({
  plan,
  block: { week, areaCode, crewId },
  area,
}: {
  plan: RoundPlan
  block: PlanBlock
  area: string
}) {
  const making = useMakeRounds()
  const monday = mondayOfWeek(plan.startsOn, week)
  const [first, setFirst] = useState('0')
  const [days, setDays] = useState('1')
  const [fitterId, setFitterId] = useState('')
  const dayAt = (index: number) => format(addDays(parseISO(monday), index), 'yyyy-MM-dd')
  return (
    <form
      className={css.row}
      aria-label={`Make rounds of ${area}`}
      onSubmit={(event) => {
        event.preventDefault()
        const walks = Array.from({ length: Number(days) }, (_, index) => ({
          walkOn: dayAt(Math.min(6, Number(first) + index)),
          fitterId: fitterId || null,
        }))
        making.mutate({ weekOf: monday, areaCode, crewId, days: walks })
      }}
    >
      <label>
        From
        <select value={first} onChange={({ target }) => setFirst(target.value)}>
          {WORKING_DAYS.map((day) => (
            <option key={day} value={day}>
              {format(parseISO(dayAt(day)), 'EEE d MMM')}
            </option>
          ))}
        </select>
      </label>
      <label>
        Days
        <select value={days} onChange={({ target }) => setDays(target.value)}>
          {['1', '2', '3', '4', '5'].map((count) => (
            <option key={count}>{count}</option>
          ))}
        </select>
      </label>
      <FitterSelect value={fitterId} onChange={setFitterId} />
      <button type="submit" disabled={making.isPending}>
        Make the {days === '1' ? 'round' : 'rounds'}
      </button>
      {making.error && <ProblemNote error={making.error} />}
    </form>
  )
}
