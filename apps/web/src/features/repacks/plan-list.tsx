import type { RepackPlanHead } from '@glandkeeper/contract/repack-plans'
import { type SubmitEvent, useState } from 'react'
import { Link, useNavigate } from 'react-router'
import { formatMoment } from '../../platform/site-time.ts'
import { formatCount } from '../../ui/count.ts'
import { ChoiceInput } from '../../ui/field.tsx'
import page from '../../ui/page.module.css'
import { useMe } from '../people/index.tsx'
import { expectedInWords } from './plan-words.ts'
import css from './repacks.module.css'

/** Plans that are kept, the newest first: to open one, or to hold two against each other. */
export function PlanList({ plans, shown }: { plans: readonly RepackPlanHead[]; shown: string | null }) {
  return (
    <section className={css.part} aria-labelledby="kept">
      <h2 id="kept">Plans that are kept</h2>
      <table className={`${page.table} ${css.rows}`}>
        <thead>
          <tr>
            <th scope="col">Plan</th>
            <th scope="col">What it is</th>
            <th scope="col">Made</th>
            <th scope="col" className={page.figure}>
              Repacks
            </th>
            <th scope="col" className={page.figure}>
              Wait
            </th>
            <th scope="col" className={page.figure}>
              Run out before
            </th>
            <th scope="col" className={page.figure}>
              Leaks before
            </th>
          </tr>
        </thead>
        <tbody>
          {plans.map((plan) => (
            <Row key={plan.planId} plan={plan} isShown={plan.planId === shown} />
          ))}
        </tbody>
      </table>
      {plans.length > 1 && <Compare key={shown} plans={plans} shown={shown} />}
    </section>
  )
}

function Row({ plan, isShown }: { plan: RepackPlanHead; isShown: boolean }) {
  const { timeZone } = useMe().site
  const { planId, name, madeAt, madeBy, totals } = plan
  return (
    <tr>
      <th scope="row">{isShown ? `${name}, shown above` : <Link to={`/repacks?plan=${planId}`}>{name}</Link>}</th>
      <td data-name="what it is">{kindInWords(plan)}</td>
      <td data-name="made">
        {formatMoment(madeAt, timeZone)}, {madeBy}
      </td>
      <td className={page.figure} data-name="repacks">
        {formatCount(totals.repacks)}
      </td>
      <td className={page.figure} data-name="wait">
        {formatCount(totals.waits)}
      </td>
      <td className={page.figure} data-name="run out before">
        {expectedInWords(totals.expectedOut)}
      </td>
      <td className={page.figure} data-name="leaks before">
        {expectedInWords(totals.expectedLeaks)}
      </td>
    </tr>
  )
}

function kindInWords({ isInUse, takenAt, whatIf }: RepackPlanHead): string {
  if (isInUse) return 'in use'
  if (whatIf !== null) return 'what if'
  return takenAt === null ? 'draft' : 'was in use'
}

function Compare({ plans, shown }: { plans: readonly RepackPlanHead[]; shown: string | null }) {
  const go = useNavigate()
  const { timeZone } = useMe().site
  const others = plans.filter(({ planId }) => planId !== shown)
  const [held, setHeld] = useState(plans.find(({ planId }) => planId === shown)?.planId ?? '')
  const [against, setAgainst] = useState((others.find(({ isInUse }) => isInUse) ?? others[0])?.planId ?? '')
  const choices = plans.map(({ planId, name, madeAt }) => ({
    value: planId,
    words: `${name}, ${formatMoment(madeAt, timeZone)}`,
  }))
  const submit = (event: SubmitEvent) => {
    event.preventDefault()
    void go(`/repacks/compare?one=${against}&other=${held}`)
  }
  return (
    <form className={css.move} onSubmit={submit} aria-label="Compare two plans">
      <ChoiceInput label="Hold" value={held} choices={choices} onChange={setHeld} />
      <ChoiceInput label="against" value={against} choices={choices} onChange={setAgainst} />
      <button type="submit" disabled={held === against || held === '' || against === ''}>
        Compare them
      </button>
    </form>
  )
}
