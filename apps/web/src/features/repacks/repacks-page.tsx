import type { RepackPlan } from '@glandkeeper/contract/repack-plans'
import { useQuery } from '@tanstack/react-query'
import { useCallback, useState } from 'react'
import { Link, useNavigate, useSearchParams } from 'react-router'
import { Empty } from '../../ui/empty.tsx'
import { useIsNarrow } from '../../ui/narrow.ts'
import page from '../../ui/page.module.css'
import { keepsRegister, useMe } from '../people/index.tsx'
import { MakePlan } from './make-plan.tsx'
import { type PlanView, planToShow, planViewOf, withView } from './plan-address.ts'
import { PlanHead } from './plan-head.tsx'
import { PlanList } from './plan-list.tsx'
import { PlanningOr, usePlanning } from './planning.tsx'
import { keptPlans, planById } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'
import { RepackList } from './repack-list.tsx'
import css from './repacks.module.css'
import { SlotAxisDrawing } from './slot-axis.tsx'
import { SlotTable } from './slot-table.tsx'
import { WhatIfResult } from './what-if-result.tsx'

/** The planner's work bench: which valve is repacked in which outage or fortnight, why, and what it risks. */
export function RepacksPage() {
  const [address] = useSearchParams()
  const view = planViewOf(address)
  const plans = useQuery(keptPlans)
  const mayPlan = keepsRegister(useMe())
  const planId = view.planId ?? (plans.data && planToShow(plans.data.plans, null)?.planId) ?? null
  return (
    <main className={page.page}>
      <title>Repacks · Glandkeeper</title>
      <div className={page.title}>
        <h1>Repacks</h1>
        <Link to="/repacks/outages">Outages</Link>
        {planId !== null && mayPlan && <Link to={`/repacks/what-if?plan=${planId}`}>Ask what if</Link>}
      </div>
      {mayPlan && <Making view={view} />}
      {!plans.data && <Reading query={plans} things="plans" />}
      {plans.data && planId === null && (
        <Empty title="No plan yet">
          <p>
            A plan puts each valve that may run out of travel into an outage or a fortnight, so that the chance of running out
            before is least for the hours and the cord there are. <Link to="/repacks/outages">Put down the outages</Link> first.
          </p>
        </Empty>
      )}
      {planId !== null && <Shown key={planId} planId={planId} view={view} />}
      {plans.data && plans.data.plans.length > 0 && <PlanList plans={plans.data.plans} shown={planId} />}
    </main>
  )
}

/** Starts a plan, or says how far it is. */
function Making({ view }: { view: PlanView }) {
  const go = useNavigate()
  const [isOpen, setIsOpen] = useState(false)
  const onReady = useCallback(
    (planId: string) => {
      setIsOpen(false)
      void go(`/repacks?plan=${planId}`)
    },
    [go],
  )
  const planning = usePlanning(onReady)
  return (
    <PlanningOr planning={planning}>
      {isOpen ? (
        <MakePlan planning={planning} onDone={() => setIsOpen(false)} />
      ) : (
        <div className={page.acts}>
          <button type="button" onClick={() => setIsOpen(true)}>
            Make a plan
          </button>
          {view.planId !== null && <Link to="/repacks">Back to the plan in use</Link>}
        </div>
      )}
    </PlanningOr>
  )
}

function Shown({ planId, view }: { planId: string; view: PlanView }) {
  const plan = useQuery(planById(planId))
  if (!plan.data) return <Reading query={plan} things="plan" />
  return (
    <>
      <PlanHead plan={plan.data} />
      {plan.data.whatIf && <WhatIfResult plan={plan.data} whatIf={plan.data.whatIf} />}
      <Slots plan={plan.data} view={view} />
      <RepackList plan={plan.data} view={view} />
    </>
  )
}

/** Drawn on a desk, in rows on a phone or where somebody prefers it. */
function Slots({ plan, view }: { plan: RepackPlan; view: PlanView }) {
  const isNarrow = useIsNarrow()
  const go = useNavigate()
  const isTable = isNarrow || view.isTable
  const onChoose = (slot: string) => {
    if (isTable) return void go(`${withView(view, { slot })}#list`)
    void go(withView(view, { slot }), { preventScrollReset: true })
    document.querySelector('#list')?.scrollIntoView({ block: 'nearest' })
  }
  return (
    <section className={css.part} aria-labelledby="slots">
      <div className={page.title}>
        <h2 id="slots">Slots</h2>
        {!isNarrow && (
          <Link to={withView(view, { isTable: !isTable })} preventScrollReset>
            {isTable ? 'As a drawing' : 'As a table'}
          </Link>
        )}
      </div>
      {isTable ? (
        <SlotTable slots={plan.slots} chosen={view.slot} onChoose={onChoose} />
      ) : (
        <>
          <p className="soft">
            Three bars each, from the left: fitting, scaffolding, isolating, as shares of the hours there. Above, outages where
            they are likely, dashed from their earliest to their latest day; below, fortnights while the plant runs. Press one for
            its valves.
          </p>
          <SlotAxisDrawing
            plan={plan}
            from={view.from}
            onFrom={(from) => void go(withView(view, { from }), { preventScrollReset: true })}
            chosen={view.slot}
            onChoose={onChoose}
          />
        </>
      )}
    </section>
  )
}
