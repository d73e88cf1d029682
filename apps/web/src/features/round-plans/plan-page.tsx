import type { RoundPlan } from '@glandkeeper/contract/round-plans'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'react-router'
import { formatMoment } from '../../platform/site-time.ts'
import { Empty } from '../../ui/empty.tsx'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { keepsRegister, useMe, useSiteToday } from '../people/index.tsx'
import { ImpossibleList } from './impossible-list.tsx'
import { LoadChartDrawing, type PendingMove } from './load-chart.tsx'
import { MakePlan } from './make-plan.tsx'
import { DraftMoves } from './draft-moves.tsx'
import { PendingMoveNote } from './pending-move.tsx'
import { PlanFigures } from './plan-figures.tsx'
import { movesQuery, plansQuery } from './queries.ts'
import { WeekTable } from './week-table.tsx'
import { weekNumber, weekOfDay } from './week-words.ts'
import css from './round-plans.module.css'

/** The planner's year: hours against crews, what a new plan moves and why, and the rounds of a week. */
export function PlanPage() {
  const plans = useQuery(plansQuery)
  const { taken, draft } = plans.data ?? {}
  return (
    <main className={page.page}>
      <title>Plan of rounds · Glandkeeper</title>
      <div className={page.title}>
        <h1>Plan of rounds</h1>
        <Link to="/rounds">Rounds that are made</Link>
        <Link to="/rounds/due">What is due and not done</Link>
        <Link to="/register/crews">Crews and days off</Link>
      </div>
      {plans.error && (
        <ProblemNote error={plans.error} again={{ words: 'Read the plan again', onPress: () => void plans.refetch() }} />
      )}
      {plans.isPending && <p role="status">Reading the plan</p>}
      {plans.data && <MakePlan key={String(taken === null)} hasPlan={taken !== null} />}
      {plans.data && !taken && !draft && (
        <Empty title="No plan yet">
          A plan spreads the looks that fall due over the weeks, so that areas are opened seldom and crews have level weeks. It
          needs a crew with hours, and valves.
        </Empty>
      )}
      {draft ? (
        <Plan key={draft.planId} plan={draft} isDraft />
      ) : (
        taken && <Plan key={taken.planId} plan={taken} isDraft={false} />
      )}
    </main>
  )
}

function Plan({ plan, isDraft }: { plan: RoundPlan; isDraft: boolean }) {
  const me = useMe()
  const thisWeek = Math.max(0, Math.min(plan.weeks - 1, weekOfDay(plan.startsOn, useSiteToday())))
  const [crewId, setCrewId] = useState<string | null>(null)
  const [firstWeek, setFirstWeek] = useState(thisWeek)
  const [week, setWeek] = useState(thisWeek)
  const [pending, setPending] = useState<PendingMove | null>(null)
  const moves = useQuery({ ...movesQuery(plan.planId), enabled: isDraft })
  const mayMove = keepsRegister(me) && !isDraft
  const lastWeek = Math.min(plan.weeks, firstWeek + 16) - 1
  return (
    <>
      <div className={css.body}>
        <section aria-label="Hours by week">
          <div className={page.title}>
            <h2>
              {isDraft ? 'Draft: hours' : 'Hours'} for walking, weeks {weekNumber(plan.startsOn, firstWeek)} to{' '}
              {weekNumber(plan.startsOn, lastWeek)}
            </h2>
            <Steps {...{ plan, crewId, setCrewId, firstWeek, setFirstWeek }} />
          </div>
          <p className="soft">{plan.areas.map(({ areaCode, name }) => `${areaCode} ${name.toLowerCase()}`).join(' · ')}</p>
          <LoadChartDrawing
            plan={plan}
            crewId={crewId}
            firstWeek={firstWeek}
            chosenWeek={week}
            onChooseWeek={setWeek}
            moves={moves.data?.moves ?? []}
            pending={pending}
            onMove={mayMove ? setPending : null}
          />
          {mayMove && (
            <p className="soft">Drag an area to another week, or choose it and use the arrow keys, to see what that brings.</p>
          )}
        </section>
        <aside className={css.side}>
          {pending && pending.to !== pending.block.week ? (
            <PendingMoveNote plan={plan} pending={pending} onDone={() => setPending(null)} />
          ) : isDraft ? (
            <DraftMoves plan={plan} moves={moves.data ?? null} />
          ) : (
            <h2>What it takes</h2>
          )}
          <PlanFigures plan={plan} />
          <p className="soft">
            Planned by {plan.madeBy}, {formatMoment(plan.madeAt, me.site.timeZone)}
            {plan.takenAt !== null && `; in use since ${formatMoment(plan.takenAt, me.site.timeZone)}`}.
            {plan.isCutShort && ' The search was ended by its time limit.'}
          </p>
        </aside>
      </div>
      <WeekTable plan={plan} week={week} isDraft={isDraft} onPlace={mayMove ? setPending : null} />
      <ImpossibleList plan={plan} isDraft={isDraft} />
    </>
  )
}

interface StepsProps {
  plan: RoundPlan
  crewId: string | null
  setCrewId: (crewId: string | null) => void
  firstWeek: number
  setFirstWeek: (week: number) => void
}

function Steps({ plan, crewId, setCrewId, firstWeek, setFirstWeek }: StepsProps) {
  const by = 8
  return (
    <div className={css.steps}>
      <button type="button" disabled={firstWeek === 0} onClick={() => setFirstWeek(Math.max(0, firstWeek - by))}>
        Earlier
      </button>
      <button
        type="button"
        disabled={firstWeek + by >= plan.weeks}
        onClick={() => setFirstWeek(Math.min(plan.weeks - 1, firstWeek + by))}
      >
        Later
      </button>
      {plan.crews.length > 1 && (
        <select aria-label="Crew" value={crewId ?? ''} onChange={({ target }) => setCrewId(target.value || null)}>
          <option value="">all crews</option>
          {plan.crews.map((crew) => (
            <option key={crew.crewId} value={crew.crewId}>
              {crew.name}
            </option>
          ))}
        </select>
      )}
    </div>
  )
}
