import type { PlanBlock, PlannedVisit, RoundPlan } from '@glandkeeper/contract/round-plans'
import { useQuery } from '@tanstack/react-query'
import { Link } from 'react-router'
import { ProblemNote } from '../../ui/problem-note.tsx'
import type { PendingMove } from './load-chart.tsx'
import { MakeRounds } from './make-rounds.tsx'
import { PinVisit } from './pin-visit.tsx'
import { useUnpinVisit, visitsQuery } from './queries.ts'
import { causeInWords, whyInWords } from './reason-words.ts'
import { mondayOfWeek, weekNumber, windowInWords } from './week-words.ts'
import css from './round-plans.module.css'

interface BlockDetailProps {
  plan: RoundPlan
  block: PlanBlock
  area: string
  isDraft: boolean
  onPlace: ((move: PendingMove) => void) | null
}

/** The visits of a walk, why each is in this week, and what a planner does with them. */
export function BlockDetail({ plan, block, area, isDraft, onPlace }: BlockDetailProps) {
  const { planId } = plan
  const { week, areaCode, crewId } = block
  const visits = useQuery(visitsQuery({ planId, week, areaCode, crewId }))
  if (!visits.data)
    return visits.error ? (
      <ProblemNote error={visits.error} again={{ words: 'Read the visits again', onPress: () => void visits.refetch() }} />
    ) : (
      <p role="status">Reading the visits</p>
    )
  return (
    <>
      {onPlace && !block.isFrozen && (
        <div className={css.row}>
          <MakeRounds plan={plan} block={block} area={area} />
          <label>
            Move all to
            <select value={week} onChange={({ target }) => onPlace({ block, to: Number(target.value) })}>
              {Array.from({ length: plan.weeks }, (_, index) => (
                <option key={index} value={index}>
                  week {weekNumber(plan.startsOn, index)}
                </option>
              ))}
            </select>
          </label>
        </div>
      )}
      <table className={css.visits}>
        <thead>
          <tr>
            <th scope="col">Valve</th>
            <th scope="col">What for</th>
            <th scope="col">Window</th>
            <th scope="col">Why this week</th>
            {!isDraft && <th scope="col">Pin</th>}
          </tr>
        </thead>
        <tbody>
          {visits.data.visits.map((visit) => (
            <Visit key={`${visit.tag} ${visit.dueWeekOf}`} {...{ plan, visit, isDraft, week }} />
          ))}
        </tbody>
      </table>
    </>
  )
}

function Visit({ plan, visit, isDraft, week }: { plan: RoundPlan; visit: PlannedVisit; isDraft: boolean; week: number }) {
  const unpinning = useUnpinVisit()
  const { tag, description, cause, missed, earliest, latest, isPinned, pinnedBy } = visit
  return (
    <tr>
      <td>
        <Link to={`/valves/${encodeURIComponent(tag)}`}>{tag}</Link> <span className="soft">{description}</span>
      </td>
      <td>{causeInWords(cause, missed)}</td>
      <td>{windowInWords(earliest, latest)}</td>
      <td>{whyInWords(visit)}</td>
      {!isDraft && (
        <td>
          {isPinned ? (
            <button
              type="button"
              disabled={unpinning.isPending}
              onClick={() => unpinning.mutate({ tag, weekOf: mondayOfWeek(plan.startsOn, week) })}
            >
              Take out the pin of {pinnedBy}
            </button>
          ) : (
            <PinVisit plan={plan} tag={tag} week={week} />
          )}
        </td>
      )}
    </tr>
  )
}
