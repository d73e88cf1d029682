import type { OkOf } from '@glandkeeper/contract/endpoint'
import type { PlanMove, RoundPlan, showMoves } from '@glandkeeper/contract/round-plans'
import { ProblemNote } from '../../ui/problem-note.tsx'
import { keepsRegister, useMe } from '../people/index.tsx'
import { useDropPlan, useTakePlan } from './queries.ts'
import { reasonInWords } from './reason-words.ts'
import { counted } from '../../ui/count.ts'
import { weekInWords } from './week-words.ts'
import css from './round-plans.module.css'

const MOST_NAMED = 8

/** What a draft moves, and why, before anybody takes it. */
export function DraftMoves({ plan, moves }: { plan: RoundPlan; moves: OkOf<typeof showMoves> | null }) {
  const me = useMe()
  const taking = useTakePlan()
  const dropping = useDropPlan()
  return (
    <section aria-labelledby="moves">
      <h2 id="moves">{moves?.isFirst ? 'The first plan' : 'What moves, and why'}</h2>
      {moves === null ? (
        <p role="status">Comparing with the plan in use</p>
      ) : moves.isFirst ? (
        <p>Nothing is planned yet, so nothing moves. Look at the weeks, then take it.</p>
      ) : (
        <Moves plan={plan} moves={moves.moves} same={moves.same} />
      )}
      {keepsRegister(me) && (
        <div className={css.steps}>
          <button type="button" className="main" disabled={taking.isPending} onClick={() => taking.mutate(plan.planId)}>
            Take this plan
          </button>
          <button type="button" disabled={dropping.isPending} onClick={() => dropping.mutate(plan.planId)}>
            Throw the draft away
          </button>
        </div>
      )}
      {(taking.error ?? dropping.error) && <ProblemNote error={taking.error ?? dropping.error} />}
    </section>
  )
}

function Moves({ plan, moves, same }: { plan: RoundPlan; moves: readonly PlanMove[]; same: number }) {
  const rest = moves.slice(MOST_NAMED).reduce((sum, { visits }) => sum + visits, 0)
  if (moves.length === 0) return <p>Nothing moves: {counted(same, 'visit stays', 'visits stay')} in the week they are in.</p>
  return (
    <>
      <ol className={css.moves}>
        {moves.slice(0, MOST_NAMED).map((move, index) => (
          <li key={`${move.areaCode} ${move.from} ${move.to}`}>
            <b>{index + 1}</b>
            <span>
              <b>
                {plan.areas.find(({ areaCode }) => areaCode === move.areaCode)?.name}, {counted(move.visits, 'visit')},{' '}
                {move.from ? weekInWords(move.from) : 'no week'} to {move.to ? weekInWords(move.to) : 'no week'}.
              </b>{' '}
              {reasonInWords(move.reason)}{' '}
              <span className="soft">
                {move.tags.join(', ')}
                {move.visits > move.tags.length && ' …'}
              </span>
            </span>
          </li>
        ))}
      </ol>
      <p className="soft">
        {rest > 0 && `${counted(rest, 'more visit moves', 'more visits move')} by ones and twos. `}
        {counted(same, 'visit stays', 'visits stay')} where {same === 1 ? 'it is' : 'they are'}.
      </p>
    </>
  )
}
