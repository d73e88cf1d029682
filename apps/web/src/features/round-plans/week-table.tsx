import type { PlanBlock, RoundPlan } from '@glandkeeper/contract/round-plans'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'react-router'
import page from '../../ui/page.module.css'
import { capital } from '../../ui/sentence.ts'
import { roundsQuery } from '../pocket/queries.ts'
import { BlockDetail } from './block-detail.tsx'
import { crewHours, loadOf, setUpOf } from './consequence.ts'
import type { PendingMove } from './load-chart.tsx'
import { counted } from '../../ui/count.ts'
import { hoursInWords, mondayOfWeek, weekInWords } from './week-words.ts'
import css from './round-plans.module.css'

interface WeekTableProps {
  plan: RoundPlan
  week: number
  isDraft: boolean
  onPlace: ((move: PendingMove) => void) | null
}

/** The walks of one week, each of which opens to its visits. */
export function WeekTable({ plan, week, isDraft, onPlace }: WeekTableProps) {
  const rounds = useQuery(roundsQuery)
  const blocks = plan.blocks.filter((block) => block.week === week)
  const monday = mondayOfWeek(plan.startsOn, week)
  const load = plan.crews.reduce((sum, { crewId }) => sum + loadOf(plan, crewId, week), 0)
  const hours = plan.crews.reduce((sum, { crewId }) => sum + crewHours(plan, crewId, week), 0)
  return (
    <section className={css.week} aria-labelledby="week">
      <h2 id="week">
        {capital(weekInWords(monday))}{' '}
        <span className="soft">
          {hoursInWords(load)} of {hoursInWords(hours)} ·{' '}
          {counted(
            blocks.reduce((sum, { visits }) => sum + visits, 0),
            'valve',
          )}{' '}
          · {counted(blocks.length, 'walk')}
        </span>
      </h2>
      {blocks.length === 0 ? (
        <p>Nothing is planned in this week.</p>
      ) : (
        <div className={page.wide}>
          <table className={page.table}>
            <thead>
              <tr>
                <th scope="col">Walk</th>
                <th scope="col">Crew</th>
                <th scope="col">Valves</th>
                <th scope="col" className={css.desk}>
                  At the valves
                </th>
                <th scope="col" className={css.desk}>
                  Set-up
                </th>
                <th scope="col">Rounds</th>
              </tr>
            </thead>
            <tbody>
              {blocks.map((block) => (
                <Block
                  key={`${block.areaCode} ${block.crewId}`}
                  {...{ plan, block, isDraft, onPlace }}
                  made={
                    rounds.data?.filter(
                      (round) => round.weekOf === monday && round.areaCode === block.areaCode && round.crewId === block.crewId,
                    ) ?? []
                  }
                />
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  )
}

interface BlockProps {
  plan: RoundPlan
  block: PlanBlock
  isDraft: boolean
  made: readonly { readonly roundId: string; readonly name: string; readonly state: string }[]
  onPlace: ((move: PendingMove) => void) | null
}

function Block({ plan, block, isDraft, made, onPlace }: BlockProps) {
  const [isOpen, setIsOpen] = useState(false)
  const { areaCode, crewId, visits, hours, isFrozen, isPinned } = block
  const area = plan.areas.find((one) => one.areaCode === areaCode)?.name ?? areaCode
  return (
    <>
      <tr>
        <td>
          <button type="button" aria-expanded={isOpen} onClick={() => setIsOpen(!isOpen)}>
            {area}
          </button>
          {isPinned && <span className="soft"> pinned</span>}
        </td>
        <td>{plan.crews.find((crew) => crew.crewId === crewId)?.name ?? ''}</td>
        <td className={page.figure}>{visits}</td>
        <td className={`${page.figure} ${css.desk}`}>{hoursInWords(hours)}</td>
        <td className={`${page.figure} ${css.desk}`}>{hoursInWords(setUpOf(plan, areaCode))}</td>
        <td>
          {made.map((round) => (
            <span key={round.roundId}>
              <Link to={`/rounds/${round.roundId}`}>{round.name}</Link> <span className="soft">{round.state}</span>{' '}
            </span>
          ))}
          {made.length === 0 && (isFrozen ? 'walked and closed' : <span className="soft">not made yet</span>)}
        </td>
      </tr>
      {isOpen && (
        <tr className={css.open}>
          <td colSpan={6}>
            <BlockDetail plan={plan} block={block} area={area} isDraft={isDraft} onPlace={onPlace} />
          </td>
        </tr>
      )}
    </>
  )
}
