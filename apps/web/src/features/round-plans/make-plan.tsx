import { useQuery } from '@tanstack/react-query'
import { useEffect, useRef, useState } from 'react'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { keepsRegister, useMe } from '../people/index.tsx'
import { planningQuery, plansQuery, useCancelPlanning, useMakePlan } from './queries.ts'
import css from './round-plans.module.css'

/** Starts a plan, shows how far it is, and stops it. */
export function MakePlan({ hasPlan }: { hasPlan: boolean }) {
  const me = useMe()
  const planning = useQuery(planningQuery)
  const plans = useQuery(plansQuery)
  const making = useMakePlan()
  const cancelling = useCancelPlanning()
  const [weeks, setWeeks] = useState('52')
  const [frozen, setFrozen] = useState(hasPlan ? '1' : '0')
  const share = planning.data?.share ?? null
  const wasPlanning = useRef(false)
  const { refetch } = plans
  useEffect(() => {
    if (wasPlanning.current && share === null) void refetch()
    wasPlanning.current = share !== null
  }, [share, refetch])
  if (!keepsRegister(me)) return null
  if (share !== null)
    return (
      <div className={css.steps} role="status">
        <span>Planning, {Math.round(share * 100)} %</span>
        <progress className={css.bar} value={share} aria-label="Planning" />
        <button type="button" disabled={cancelling.isPending} onClick={() => cancelling.mutate(undefined)}>
          Stop planning
        </button>
      </div>
    )
  return (
    <>
      <form
        className={css.row}
        aria-label="Make a plan"
        onSubmit={(event) => {
          event.preventDefault()
          making.mutate({ weeks: Number(weeks), frozenWeeks: Number(frozen), seed: 1 })
        }}
      >
        <label>
          Weeks to plan
          <select value={weeks} onChange={({ target }) => setWeeks(target.value)}>
            {['12', '26', '52', '104'].map((count) => (
              <option key={count}>{count}</option>
            ))}
          </select>
        </label>
        <label>
          Weeks that stay as they are
          <select value={frozen} onChange={({ target }) => setFrozen(target.value)}>
            {['0', '1', '2', '4', '8'].map((count) => (
              <option key={count} value={count}>
                {count === '0' ? 'none' : count}
              </option>
            ))}
          </select>
        </label>
        <button type="submit" disabled={making.isPending}>
          {hasPlan ? 'Plan again' : 'Make a plan'}
        </button>
      </form>
      {planning.data?.fault && <p role="alert">{planning.data.fault}</p>}
      {making.error && <ProblemNote error={making.error} />}
    </>
  )
}
