import type { RepackPlan, WhatIf } from '@glandkeeper/contract/repack-plans'
import type { PlannedRepack } from '@glandkeeper/contract/planned-repacks'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'react-router'
import { formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { capital } from '../../ui/sentence.ts'
import { ChanceMark } from './chance-mark.tsx'
import { allRepacksOf, planById } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'
import css from './repacks.module.css'
import { slotInWords, slotNamed } from './slot-words.ts'
import { TotalsTable } from './totals-table.tsx'
import { byChanceIfKept, keptInWords, whatIfInWords } from './what-if-words.ts'

/** The answer to a question: as planned, the plan kept under what changed, and planned anew. */
export function WhatIfResult({ plan, whatIf }: { plan: RepackPlan; whatIf: WhatIf }) {
  const { ifKept, basedOn, totals, objective } = plan
  const before = useQuery({ ...planById(basedOn ?? ''), enabled: basedOn !== null })
  const columns = [
    ...(before.data ? [{ name: 'As planned', totals: before.data.totals, objective: before.data.objective }] : []),
    ...(ifKept ? [{ name: 'Plan kept', totals: ifKept.totals, objective }] : []),
    { name: 'Planned anew', totals, objective },
  ]
  return (
    <section className={css.part} aria-labelledby="what-if">
      <h2 id="what-if">{whatIfInWords(whatIf, plan.slots)}</h2>
      {ifKept && <p className={css.sentence}>{keptInWords(ifKept, totals)}</p>}
      <TotalsTable
        caption={`Held against ${before.data?.name ?? 'a plan that was thrown away'}; small, how far each is from the first.`}
        columns={columns}
      />
      {ifKept && <Breaks plan={plan} ifKept={ifKept} />}
      {ifKept && <WhoRunsOut plan={plan} />}
    </section>
  )
}

/** What the kept plan would ask for and not get. */
function Breaks({ plan, ifKept }: { plan: RepackPlan; ifKept: NonNullable<RepackPlan['ifKept']> }) {
  const over = plan.slots.filter(({ slotId }) => ifKept.overHours.includes(slotId))
  if (over.length === 0 && ifKept.short.length === 0)
    return <p>The plan, if kept, stays within all hours and the store has what it needs.</p>
  return (
    <ul className={css.unkept}>
      {over.length > 0 && (
        <li>
          <b>Over their hours if kept:</b> {over.map(slotInWords).join('; ')}.
        </li>
      )}
      {ifKept.short.length > 0 && (
        <li>
          <b>Runs short if kept:</b> {ifKept.short.join('; ')}.
        </li>
      )}
    </ul>
  )
}

const FIRST_SHOWN = 10
const MOST_SHOWN = 200

function WhoRunsOut({ plan }: { plan: RepackPlan }) {
  const repacks = useQuery(allRepacksOf(plan.planId))
  const [isAll, setIsAll] = useState(false)
  if (!repacks.data) return <Reading query={repacks} things="valves" />
  const ranked = byChanceIfKept(repacks.data.repacks, MOST_SHOWN)
  const missing = repacks.data.total - repacks.data.repacks.length
  return (
    <>
      <h3 className={css.third}>Who runs out, if the plan is kept</h3>
      <table className={`${page.table} ${css.rows}`}>
        <thead>
          <tr>
            <th scope="col">Valve</th>
            <th scope="col">If the plan is kept</th>
            <th scope="col">Planned anew</th>
          </tr>
        </thead>
        <tbody>
          {(isAll ? ranked : ranked.slice(0, FIRST_SHOWN)).map((repack) => (
            <Row key={repack.tag} plan={plan} repack={repack} />
          ))}
        </tbody>
      </table>
      {!isAll && ranked.length > FIRST_SHOWN && (
        <button type="button" onClick={() => setIsAll(true)}>
          Show {formatCount(ranked.length)} of them
        </button>
      )}
      {missing > 0 && <p className="soft">Looked at the {formatCount(repacks.data.repacks.length)} that cost most only.</p>}
    </>
  )
}

function Row({ plan: { slots }, repack }: { plan: RepackPlan; repack: ReturnType<typeof byChanceIfKept>[number] }) {
  const { tag, description, ifKept, slotId, chanceOut } = repack
  return (
    <tr>
      <th scope="row">
        <Link to={`/valves/${encodeURIComponent(tag)}`} className={css.tag}>
          {tag}
        </Link>{' '}
        <span className={css.plain}>{description}</span>
      </th>
      <Place name="if kept" chance={ifKept.chanceOut} slot={named(slots, ifKept.slotId)} />
      <Place name="anew" chance={chanceOut} slot={ifKept.slotId === slotId ? 'the same slot' : named(slots, slotId)} />
    </tr>
  )
}

function named(slots: RepackPlan['slots'], slotId: PlannedRepack['slotId']): string {
  return slotId === null ? 'waits' : slotNamed(slots, slotId)
}

function Place({ name, chance, slot }: { name: string; chance: number; slot: string }) {
  return (
    <td data-name={name}>
      <ChanceMark chance={chance} /> <span className={`soft ${css.line}`}>{capital(slot)}</span>
    </td>
  )
}
