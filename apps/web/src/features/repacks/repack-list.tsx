import type { RepackPlan } from '@glandkeeper/contract/repack-plans'
import type { PlannedRepack } from '@glandkeeper/contract/planned-repacks'
import { useQuery } from '@tanstack/react-query'
import { Link } from 'react-router'
import { formatCount } from '../../ui/count.ts'
import page from '../../ui/page.module.css'
import { capital } from '../../ui/sentence.ts'
import { keepsRegister, useMe } from '../people/index.tsx'
import { type PlanView, withView } from './plan-address.ts'
import { costNote } from './plan-words.ts'
import { repacksOf, useMoveRepack } from './queries.ts'
import { Reading } from '../../ui/reading.tsx'
import { RepackRow } from './repack-row.tsx'
import css from './repacks.module.css'
import { slotNamed } from './slot-words.ts'

/** Valves of the chosen slot, of those that wait, or all: those that cost most first. */
export function RepackList({ plan, view }: { plan: RepackPlan; view: PlanView }) {
  const me = useMe()
  const repacks = useQuery(repacksOf(plan.planId, view.slot, view.skip))
  const moving = useMoveRepack(plan.planId)
  const { repacks: shown, total } = repacks.data ?? { repacks: [], total: 0 }
  const mayChange = keepsRegister(me) && plan.whatIf === null && (plan.takenAt === null || plan.isInUse)
  return (
    <section className={css.part} aria-labelledby="list">
      <h2 id="list" className={css.listed}>
        {titleOf(plan, view.slot)} {repacks.data && <span className="soft">{formatCount(total)}</span>}
      </h2>
      <nav aria-label="Lists of valves" className={css.choices}>
        <Link to={withView(view, { slot: null })} preventScrollReset aria-current={view.slot === null ? 'true' : undefined}>
          All, what costs most first
        </Link>
        <Link to={withView(view, { slot: 'none' })} preventScrollReset aria-current={view.slot === 'none' ? 'true' : undefined}>
          Those that wait, {formatCount(plan.totals.waits)}
        </Link>
        <span className="soft">{costNote[plan.objective]}</span>
      </nav>
      {moving.data && (
        <p role="status">
          Moved and pinned: {moving.data.moved.join(', ')}, to {slotNamed(plan.slots, moving.variables?.slotId ?? null)}.
        </p>
      )}
      {!repacks.data ? (
        <Reading query={repacks} things="valves" />
      ) : shown.length === 0 ? (
        <p>{view.skip > 0 ? 'The list ends before this.' : 'No valve is in this list.'}</p>
      ) : (
        <Rows {...{ plan, shown, moving, mayChange }} hasSlot={view.slot === null} />
      )}
      {total > 0 && <Pages {...{ view, total }} count={shown.length} />}
    </section>
  )
}

function titleOf({ slots }: RepackPlan, slot: string | null): string {
  if (slot === null) return 'All valves of the plan'
  return slot === 'none' ? 'Those that wait' : capital(slotNamed(slots, slot))
}

interface RowsProps {
  plan: RepackPlan
  shown: readonly PlannedRepack[]
  moving: ReturnType<typeof useMoveRepack>
  mayChange: boolean
  hasSlot: boolean
}

function Rows({ plan, shown, moving, mayChange, hasSlot }: RowsProps) {
  return (
    <table className={`${page.table} ${css.rows}`}>
      <thead>
        <tr>
          <th scope="col">Valve</th>
          <th scope="col">Standing</th>
          <th scope="col">Out of travel before it</th>
          {hasSlot && <th scope="col">Slot</th>}
          <th scope="col">Why</th>
          <th scope="col">Takes</th>
          {mayChange && <th scope="col">To change</th>}
        </tr>
      </thead>
      <tbody>
        {shown.map((repack) => (
          <RepackRow key={repack.tag} {...{ plan, repack, moving, mayChange, hasSlot }} />
        ))}
      </tbody>
    </table>
  )
}

/** The server gives a portion at a time; the way back is that of the browser. */
function Pages({ view, count, total }: { view: PlanView; count: number; total: number }) {
  const next = view.skip + count
  if (view.skip === 0 && next >= total) return null
  return (
    <nav aria-label="Portions of the list" className={css.choices}>
      <span className="soft">
        {count === 0 ? 'none' : `${formatCount(view.skip + 1)} to ${formatCount(next)}`} of {formatCount(total)}
      </span>
      {view.skip > 0 && <Link to={`${withView(view, { skip: 0 })}#list`}>The first ones</Link>}
      {count > 0 && next < total && <Link to={`${withView(view, { skip: next })}#list`}>The next ones</Link>}
    </nav>
  )
}
