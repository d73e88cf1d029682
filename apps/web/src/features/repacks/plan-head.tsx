import type { RepackPlan } from '@glandkeeper/contract/repack-plans'
import { useNavigate } from 'react-router'
import { formatDay, formatMoment } from '../../platform/site-time.ts'
import { counted } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { keepsRegister, useMe } from '../people/index.tsx'
import { expectedOfPlanInWords, objectiveInWords, placesInWords, qualityInWords } from './plan-words.ts'
import { useDropPlan, useTakePlan } from './queries.ts'
import css from './repacks.module.css'
import { slotNamed } from './slot-words.ts'

/** What a plan comes to in a few sentences, who made it, and what may be done with it. */
export function PlanHead({ plan }: { plan: RepackPlan }) {
  return (
    <section className={css.head} aria-labelledby="plan">
      <h2 id="plan">
        {plan.name}{' '}
        <span className="soft">{plan.isInUse ? 'in use' : plan.whatIf ? 'an answer to what if' : takenOrDraft(plan)}</span>
      </h2>
      <p className={css.sentence}>
        {placesInWords(plan)} {plan.totals.valves > 0 && `${expectedOfPlanInWords(plan.totals)} ${qualityInWords(plan)}`}
      </p>
      <Unkept plan={plan} />
      <Made plan={plan} />
      <Acts plan={plan} />
    </section>
  )
}

const takenOrDraft = ({ takenAt }: RepackPlan) => (takenAt === null ? 'a draft' : 'was in use before')

function Made({ plan }: { plan: RepackPlan }) {
  const { timeZone } = useMe().site
  const { madeBy, madeAt, takenAt, takenBy, objective, startsOn, weeks } = plan
  return (
    <p className="soft">
      Made by {madeBy}, {formatMoment(madeAt, timeZone)}, for {counted(weeks, 'week')} from {formatDay(startsOn)}, so that{' '}
      {objectiveInWords[objective]} is least
      {takenAt !== null && `; taken ${takenBy === null ? '' : `by ${takenBy}, `}${formatMoment(takenAt, timeZone)}`}. It proposes:
      permits, site procedure and qualified people decide, and nothing here authorises work.
    </p>
  )
}

/** Pins nobody could keep, and stock that runs short: said before the slots, since both need a hand. */
function Unkept({ plan: { infeasiblePins, slots, stock } }: { plan: RepackPlan }) {
  if (infeasiblePins.length === 0 && stock.length === 0) return null
  return (
    <ul className={css.unkept}>
      {infeasiblePins.map(({ tags, slotId, why }) => (
        <li key={`${tags.join(' ')} ${slotId}`}>
          <b>The pin of {tags.join(', ')} cannot be kept</b>, {slotNamed(slots, slotId)}: {why}
        </li>
      ))}
      {stock.map(({ itemId, name, unit, before, amount, used }) => (
        <li key={`${itemId} ${before}`}>
          {name}: slots before {formatDay(before)} may use {amount.toFixed(1)}&nbsp;{unit} in all, and use {used.toFixed(1)}
          &nbsp;{unit}.
        </li>
      ))}
    </ul>
  )
}

function Acts({ plan: { planId, takenAt, whatIf } }: { plan: RepackPlan }) {
  const me = useMe()
  const go = useNavigate()
  const taking = useTakePlan()
  const dropping = useDropPlan()
  if (!keepsRegister(me) || takenAt !== null) return null
  return (
    <>
      <div className={page.acts}>
        {whatIf === null && (
          <button type="button" className="main" disabled={taking.isPending} onClick={() => taking.mutate(planId)}>
            Take this plan
          </button>
        )}
        <button
          type="button"
          disabled={dropping.isPending}
          onClick={() => dropping.mutate(planId, { onSuccess: () => void go('/repacks') })}
        >
          Throw it away
        </button>
      </div>
      {(taking.error ?? dropping.error) && <ProblemNote error={taking.error ?? dropping.error} />}
    </>
  )
}
