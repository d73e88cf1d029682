import type { Outage } from '@glandkeeper/contract/outages'
import type { RepackPlanHead } from '@glandkeeper/contract/repack-plans'
import { useQuery } from '@tanstack/react-query'
import { useCallback } from 'react'
import { Link, useNavigate, useSearchParams } from 'react-router'
import { Empty } from '../../ui/empty.tsx'
import page from '../../ui/page.module.css'
import { ForRegisterKeepers } from '../people/index.tsx'
import { planToShow } from './plan-address.ts'
import { PlanningOr, usePlanning } from './planning.tsx'
import { keptPlans, outagesOfSite } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'
import { WhatIfForm } from './what-if-form.tsx'

/** A question to a plan: what if an outage slips, hours are fewer, cord comes late? */
export function WhatIfPage() {
  return (
    <ForRegisterKeepers>
      <main className={page.page}>
        <title>What if · Glandkeeper</title>
        <div className={page.title}>
          <h1>What if</h1>
          <Link to="/repacks">Back to repacks</Link>
        </div>
        <Question />
      </main>
    </ForRegisterKeepers>
  )
}

function Question() {
  const [address] = useSearchParams()
  const plans = useQuery(keptPlans)
  const outages = useQuery(outagesOfSite)
  if (!plans.data) return <Reading query={plans} things="plans" />
  if (!outages.data) return <Reading query={outages} things="outages" />
  // A question is held against a plan, not against the answer to another question.
  const plain = plans.data.plans.filter(({ whatIf }) => whatIf === null)
  const plan = planToShow(plain, address.get('plan'))
  if (!plan)
    return (
      <Empty title="No plan to ask about">
        <p>
          <Link to="/repacks">Make a plan first</Link>: a question shows what becomes of it.
        </p>
      </Empty>
    )
  return <Ask plan={plan} outages={outages.data.outages.filter(({ state }) => state === 'planned')} />
}

function Ask({ plan, outages }: { plan: RepackPlanHead; outages: readonly Outage[] }) {
  const go = useNavigate()
  const onReady = useCallback((planId: string) => void go(`/repacks?plan=${planId}`), [go])
  const planning = usePlanning(onReady)
  return (
    <>
      <p>
        Held against <Link to={`/repacks?plan=${plan.planId}`}>{plan.name}</Link>
        {plan.isInUse && ', the plan in use'}. Nothing is changed by asking: the answer shows that plan kept under what changed,
        and planned anew.
      </p>
      <PlanningOr planning={planning}>
        <WhatIfForm plan={plan} outages={outages} planning={planning} />
      </PlanningOr>
    </>
  )
}
