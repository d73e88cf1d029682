import type { RepackPlan } from '@glandkeeper/contract/repack-plans'
import type { PlannedRepack } from '@glandkeeper/contract/planned-repacks'
import { formatMillimetres } from '@glandkeeper/units/format'
import { format } from 'date-fns'
import { useState } from 'react'
import { Link } from 'react-router'
import { capital } from '../../ui/sentence.ts'
import { StandingMark } from '../../ui/standing.tsx'
import { ChanceMark } from './chance-mark.tsx'
import { MoveRepack } from './move-repack.tsx'
import type { useMoveRepack } from './queries.ts'
import { boundaryInWords, pinInWords, reasonInWords, runnerUpInWords, runsOutInWords } from './reason-words.ts'
import { useSiteToday } from '../people/index.tsx'
import css from './repacks.module.css'
import { slotNamed, tradesInWords } from './slot-words.ts'

interface RepackRowProps {
  plan: RepackPlan
  repack: PlannedRepack
  moving: ReturnType<typeof useMoveRepack>
  mayChange: boolean
  hasSlot: boolean
}

/** One valve: what it risks, why it is where it is, and on demand what a planner may do with it. */
export function RepackRow({ plan, repack, moving, mayChange, hasSlot }: RepackRowProps) {
  const [isOpen, setIsOpen] = useState(false)
  const { tag, slotId, pin, reason } = repack
  return (
    <>
      <tr className={isOpen ? css.above : undefined}>
        <ValveCells repack={repack} />
        {hasSlot && <td data-name="slot">{capital(slotId === null ? 'waits' : slotNamed(plan.slots, slotId))}</td>}
        <td>
          {reasonInWords(repack)} <span className="soft">{runnerUpInWords(repack, plan.slots, plan.objective)}</span>
          {pin && reason !== 'pinned' && <span className={css.line}>{capital(pinInWords(pin, plan.slots))}.</span>}
        </td>
        <td data-name="takes">
          {capital(tradesInWords(repack.hours))}
          <span className={`soft ${css.line}`}>{repack.needs ?? 'What it takes cannot be said: gland or packing not known'}</span>
        </td>
        {mayChange && (
          <td className={css.change}>
            <button
              type="button"
              className={css.quiet}
              aria-expanded={isOpen}
              aria-label={`Move or pin ${tag}`}
              onClick={() => setIsOpen(!isOpen)}
            >
              Move or pin
            </button>
          </td>
        )}
      </tr>
      {isOpen && (
        <tr>
          <td colSpan={7}>
            <MoveRepack plan={plan} repack={repack} moving={moving} />
          </td>
        </tr>
      )}
    </>
  )
}

function ValveCells({ repack }: { repack: PlannedRepack }) {
  const { tag, description, areaCode, standing, reserve, chanceOut, runsOutOn } = repack
  return (
    <>
      <th scope="row">
        <Link to={`/valves/${encodeURIComponent(tag)}`} className={css.tag}>
          {tag}
        </Link>{' '}
        <span className={css.plain}>{description}</span>
        <span className={`soft ${css.line}`}>
          {/* Boundaries are mostly named by their area first. */}
          {repack.boundary.startsWith(areaCode) ? '' : `${areaCode}. `}
          {boundaryInWords(repack)}
        </span>
      </th>
      <td data-name="standing">
        <StandingMark standing={standing} />
        {reserve !== null && <span className={`soft ${css.line} ${css.whole}`}>{formatMillimetres(reserve)} left</span>}
      </td>
      <td data-name="out of travel before it">
        <ChanceMark chance={chanceOut} />
        <span className={`soft ${css.line}`}>{runsOutInWords(runsOutOn, format(useSiteToday(), 'yyyy-MM-dd'))}</span>
      </td>
    </>
  )
}
