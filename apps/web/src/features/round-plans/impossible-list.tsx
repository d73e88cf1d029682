import type { Impossible, RoundPlan } from '@glandkeeper/contract/round-plans'
import { useState } from 'react'
import { Link } from 'react-router'
import page from '../../ui/page.module.css'
import { impossibleGroups } from './impossible-groups.ts'
import { PinVisit } from './pin-visit.tsx'
import { causeInWords, reasonInWords } from './reason-words.ts'
import { counted } from '../../ui/count.ts'
import { weekNumber } from './week-words.ts'
import css from './round-plans.module.css'

/** Visits that are in no week, by area and reason: a planner adds hours, opens an area, or pins them one by one. */
export function ImpossibleList({ plan, isDraft }: { plan: RoundPlan; isDraft: boolean }) {
  if (plan.impossibleCount === 0) return null
  const missing = plan.impossibleCount - plan.impossible.length
  return (
    <section className={css.week} aria-labelledby="impossible">
      <h2 id="impossible">In no week: {counted(plan.impossibleCount, 'visit')}</h2>
      <div className={page.wide}>
        <table className={page.table}>
          <thead>
            <tr>
              <th scope="col">Area</th>
              <th scope="col">Visits</th>
              <th scope="col" className={css.desk}>
                Due in weeks
              </th>
              <th scope="col">Why they are in no week</th>
            </tr>
          </thead>
          <tbody>
            {impossibleGroups(plan.impossible).map((group) => (
              <Group key={`${group.areaCode} ${group.reason}`} {...{ plan, isDraft, group }} />
            ))}
          </tbody>
        </table>
      </div>
      {missing > 0 && <p className="soft">Later in the year {counted(missing, 'more', 'more')}, not listed here.</p>}
    </section>
  )
}

interface GroupProps {
  plan: RoundPlan
  isDraft: boolean
  group: ReturnType<typeof impossibleGroups>[number]
}

function Group({ plan, isDraft, group: { areaCode, reason, visits } }: GroupProps) {
  const [isOpen, setIsOpen] = useState(false)
  const weeks = [visits[0], visits.at(-1)].map((visit) => weekNumber(plan.startsOn, visit?.dueWeek ?? 0))
  const area = plan.areas.find((one) => one.areaCode === areaCode)?.name ?? areaCode
  return (
    <>
      <tr>
        <td>
          <button type="button" aria-expanded={isOpen} onClick={() => setIsOpen(!isOpen)}>
            {area}
          </button>
        </td>
        <td className={page.figure}>{visits.length}</td>
        <td className={`${page.figure} ${css.desk}`}>{weeks[0] === weeks[1] ? weeks[0] : weeks.join(' to ')}</td>
        <td>{reasonInWords(reason)}</td>
      </tr>
      {isOpen && (
        <tr className={css.open}>
          <td colSpan={4}>
            <table className={css.visits} aria-label={`Visits of ${area} in no week`}>
              <tbody>
                {visits.map((visit) => (
                  <Visit key={`${visit.tag} ${visit.dueWeek}`} {...{ plan, isDraft, visit }} />
                ))}
              </tbody>
            </table>
          </td>
        </tr>
      )}
    </>
  )
}

function Visit({ plan, isDraft, visit: { tag, dueWeek, cause } }: { plan: RoundPlan; isDraft: boolean; visit: Impossible }) {
  return (
    <tr>
      <td>
        <Link to={`/valves/${encodeURIComponent(tag)}`}>{tag}</Link>
      </td>
      <td>{causeInWords(cause)}</td>
      <td>due in week {weekNumber(plan.startsOn, dueWeek)}</td>
      <td>{!isDraft && <PinVisit plan={plan} tag={tag} week={Math.max(0, Math.min(plan.weeks - 1, dueWeek))} />}</td>
    </tr>
  )
}
