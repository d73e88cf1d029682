import type { RoundPlan } from '@glandkeeper/contract/round-plans'
import { useState } from 'react'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { keepsRegister, useMe } from '../people/index.tsx'
import { usePinVisit } from './queries.ts'
import { mondayOfWeek, weekNumber } from './week-words.ts'
import css from './round-plans.module.css'

/** Pins the visit of one valve to a week, and to a crew where there are several. It holds for every plan after. */
export function PinVisit({ plan, tag, week }: { plan: RoundPlan; tag: string; week: number }) {
  const me = useMe()
  const pinning = usePinVisit()
  const [chosen, setChosen] = useState(String(week))
  const [crewId, setCrewId] = useState('')
  const [isOpen, setIsOpen] = useState(false)
  if (!keepsRegister(me)) return null
  if (!isOpen)
    return (
      <button type="button" aria-label={`Pin ${tag} to a week`} onClick={() => setIsOpen(true)}>
        Pin
      </button>
    )
  return (
    <>
      <form
        className={css.row}
        onSubmit={(event) => {
          event.preventDefault()
          pinning.mutate({ tag, weekOf: mondayOfWeek(plan.startsOn, Number(chosen)), crewId: crewId || null })
        }}
      >
        <select aria-label={`Week for ${tag}`} value={chosen} onChange={({ target }) => setChosen(target.value)}>
          {Array.from({ length: plan.weeks }, (_, index) => (
            <option key={index} value={index}>
              week {weekNumber(plan.startsOn, index)}
            </option>
          ))}
        </select>
        {plan.crews.length > 1 && (
          <select aria-label={`Crew for ${tag}`} value={crewId} onChange={({ target }) => setCrewId(target.value)}>
            <option value="">any crew</option>
            {plan.crews.map((crew) => (
              <option key={crew.crewId} value={crew.crewId}>
                {crew.name}
              </option>
            ))}
          </select>
        )}
        <button type="submit" disabled={pinning.isPending}>
          Pin {tag}
        </button>
      </form>
      {pinning.error && <ProblemNote error={pinning.error} />}
    </>
  )
}
