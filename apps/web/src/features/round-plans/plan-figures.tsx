import type { RoundPlan } from '@glandkeeper/contract/round-plans'
import { loadOf } from './consequence.ts'
import { hoursInWords } from './week-words.ts'
import css from './round-plans.module.css'

const percent = (share: number) => `${(share * 100).toFixed(1)}\u00a0%`

/** What a plan takes, beside each visit made in its due week, and how far it may be from the best there is. */
export function PlanFigures({ plan }: { plan: RoundPlan }) {
  const { busiest, quietest } = weeksByLoad(plan)
  return (
    <>
      <dl className={css.figures}>
        <dt>At the valves</dt>
        <dd>{hoursInWords(plan.visitHours)}</dd>
        <dt>Setting up areas</dt>
        <dd>
          {hoursInWords(plan.setUpHours)}; each look in its due week {hoursInWords(plan.inDueWeeks.setUpHours)}
        </dd>
        <dt>Overtime</dt>
        <dd>
          {hoursInWords(plan.overtimeHours)}; each look in its due week {hoursInWords(plan.inDueWeeks.overtimeHours)}
        </dd>
        <dt>Fullest week of a crew</dt>
        <dd>
          {percent(busiest)} of its hours; emptiest {percent(quietest)}
        </dd>
      </dl>
      <p className="soft">
        {plan.gap < 0.0005
          ? 'No plan of these looks costs less'
          : `No plan of these looks can cost less than ${percent(1 / (1 + plan.gap))} of this one`}
        , counted in hours of set-up, full weeks and overtime.
      </p>
    </>
  )
}

/** Share of its hours that a crew is planned for, in the fullest and the emptiest week of any crew. */
function weeksByLoad(plan: RoundPlan): { busiest: number; quietest: number } {
  const shares = plan.crews.flatMap(({ crewId, hours }) =>
    hours.flatMap((own, week) => (own > 0 ? [loadOf(plan, crewId, week) / own] : [])),
  )
  return { busiest: Math.max(0, ...shares), quietest: shares.length === 0 ? 0 : Math.min(...shares) }
}
