import type { RoundPlan } from '@glandkeeper/contract/round-plans'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { consequenceOf } from './consequence.ts'
import type { PendingMove } from './load-chart.tsx'
import { useMoveBlock } from './queries.ts'
import { consequenceInWords } from './reason-words.ts'
import { mondayOfWeek, weekNumber } from './week-words.ts'
import css from './round-plans.module.css'

/** What a move brings, at once; it is made when the planner says so. */
export function PendingMoveNote({
  plan,
  pending: { block, to },
  onDone,
}: {
  plan: RoundPlan
  pending: PendingMove
  onDone: () => void
}) {
  const moving = useMoveBlock(plan.planId)
  const { areaCode, crewId, week: from } = block
  const area = plan.areas.find((one) => one.areaCode === areaCode)?.name ?? areaCode
  return (
    <section className={css.pending} aria-label="A move, not made yet">
      <p role="status">
        {consequenceInWords(consequenceOf(plan, block, to), {
          area,
          from: mondayOfWeek(plan.startsOn, from),
          to: mondayOfWeek(plan.startsOn, to),
        })}
      </p>
      <div className={css.steps}>
        <button
          type="button"
          className="main"
          disabled={moving.isPending}
          onClick={() => moving.mutate({ areaCode, crewId, from, to }, { onSuccess: onDone })}
        >
          Move to week {weekNumber(plan.startsOn, to)}
        </button>
        <button type="button" onClick={onDone}>
          Leave it
        </button>
      </div>
      {moving.error && <ProblemNote error={moving.error} />}
    </section>
  )
}
