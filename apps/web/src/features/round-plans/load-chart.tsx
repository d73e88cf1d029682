import type { PlanBlock, PlanMove, RoundPlan } from '@glandkeeper/contract/round-plans'
import { parseISO } from 'date-fns'
import { type PointerEvent, useState } from 'react'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { type ChartBar, loadChart, type LoadChart, weekAt } from './load-chart-geometry.ts'
import { counted } from '../../ui/count.ts'
import { hoursInWords, weekNumber, weekOfDay } from './week-words.ts'
import css from './round-plans.module.css'

export interface PendingMove {
  readonly block: PlanBlock
  readonly to: number
}

interface LoadChartProps {
  plan: RoundPlan
  crewId: string | null
  firstWeek: number
  chosenWeek: number
  onChooseWeek: (week: number) => void
  /** What a draft moves, the most visits first: the first few are drawn. */
  moves: readonly PlanMove[]
  pending: PendingMove | null
  /** Null where nothing may be moved. */
  onMove: ((move: PendingMove) => void) | null
}

const MOST_DRAWN_MOVES = 8
const LEAST_WEEK_WIDTH = 34
const MOST_WEEKS = 16

/** Hours of each week against what the crew has; a block is dragged to another week, or moved there with the arrow keys. */
export function LoadChartDrawing(props: LoadChartProps) {
  const [measure, width] = useMeasuredWidth()
  return (
    <div ref={measure} className={css.chart}>
      {width !== null && width > 0 && <Drawn {...props} width={width} />}
    </div>
  )
}

/** How many weeks fit. */
function weeksIn(width: number, { plan, firstWeek }: LoadChartProps): number {
  return Math.max(1, Math.min(MOST_WEEKS, plan.weeks - firstWeek, Math.floor((width - 48) / LEAST_WEEK_WIDTH)))
}

function Drawn({ width, ...props }: LoadChartProps & { width: number }) {
  const { plan, crewId, firstWeek, chosenWeek, onChooseWeek, moves, pending, onMove } = props
  const chart = loadChart({ plan, crewId, firstWeek, weeks: weeksIn(width, props), width })
  const [lifted, setLifted] = useState<PlanBlock | null>(null)
  const drag = (event: PointerEvent<SVGSVGElement>) => {
    if (!lifted || !onMove) return
    const to = weekAt(chart, event.clientX - event.currentTarget.getBoundingClientRect().left)
    if (to !== (pending?.to ?? lifted.week)) onMove({ block: lifted, to })
  }
  const chosen = chart.weeks.find(({ week }) => week === chosenWeek)
  return (
    <svg
      width={width}
      height={chart.height}
      role="group"
      aria-label="Hours of each week against the hours of the crew"
      onPointerMove={drag}
      onPointerUp={() => setLifted(null)}
      onPointerLeave={() => setLifted(null)}
    >
      {chart.lines.map(({ hours, y }) => (
        <g key={hours}>
          <path d={`M${chart.left} ${y}H${chart.right}`} className="hair" strokeDasharray="1 4" />
          <text x={chart.left - 8} y={y + 5} textAnchor="end" fontSize={13}>
            {hours}
          </text>
        </g>
      ))}
      {chosen && (
        <rect
          x={chosen.x}
          y={14}
          width={chart.step}
          height={chart.height - 16}
          className={css.chosen}
          data-testid="chosen week"
        />
      )}
      {chart.bars.map((bar) => (
        <Bar
          key={`${bar.block.week} ${bar.block.areaCode} ${bar.block.crewId}`}
          bar={bar}
          plan={plan}
          isMoved={moves.some((move) => isMoveTo(move, bar.block, plan.startsOn))}
          isPending={pending?.block === bar.block}
          onChoose={() => onChooseWeek(bar.block.week)}
          onLift={onMove && !bar.block.isFrozen ? () => setLifted(bar.block) : null}
          onNudge={
            onMove && !bar.block.isFrozen
              ? (by) =>
                  onMove({
                    block: bar.block,
                    to: clamp((pending?.block === bar.block ? pending.to : bar.block.week) + by, plan.weeks),
                  })
              : null
          }
        />
      ))}
      <path d={chart.capacity} className={css.capacity} />
      <text x={chart.right} y={12} textAnchor="end" fontSize={14}>
        heavy line: crew hours
      </text>
      <path d={`M${chart.left} ${chart.base}H${chart.right}`} className="out" />
      {chart.weeks.map(({ week, middle, load }) => (
        <g key={week} onClick={() => onChooseWeek(week)} className={css.weekLabel}>
          <text x={middle} y={chart.base + 18} textAnchor="middle" fontSize={15} fontWeight={week === chosenWeek ? 700 : 400}>
            {weekNumber(plan.startsOn, week)}
          </text>
          <text x={middle} y={chart.base + 36} textAnchor="middle" fontSize={13} className="soft">
            {chart.step > 40 ? hoursInWords(load) : Math.round(load)}
          </text>
        </g>
      ))}
      <Ghosts chart={chart} plan={plan} moves={moves} />
      {pending && <PendingGhost chart={chart} pending={pending} />}
    </svg>
  )
}

const clamp = (week: number, weeks: number) => Math.min(weeks - 1, Math.max(0, week))

interface BarProps {
  bar: ChartBar
  plan: RoundPlan
  isMoved: boolean
  isPending: boolean
  onChoose: () => void
  onLift: (() => void) | null
  onNudge: ((by: 1 | -1) => void) | null
}

function Bar({ bar: { block, x, y, width, height, wash }, plan, isMoved, isPending, onChoose, onLift, onNudge }: BarProps) {
  const area = plan.areas.find(({ areaCode }) => areaCode === block.areaCode)
  const says = `${area?.name ?? block.areaCode}, week ${weekNumber(plan.startsOn, block.week)}, ${counted(block.visits, 'visit')}, ${hoursInWords(block.hours)}${block.isFrozen ? ', its round is made' : ''}${block.isPinned ? ', pinned' : ''}`
  return (
    <g
      role="button"
      tabIndex={0}
      aria-label={says}
      className={onLift ? css.movable : css.block}
      onClick={onChoose}
      onPointerDown={(event) => event.pointerType !== 'touch' && onLift?.()}
      onKeyDown={(event) => {
        if (event.key === 'Enter' || event.key === ' ') onChoose()
        else if (event.key === 'ArrowRight') onNudge?.(1)
        else if (event.key === 'ArrowLeft') onNudge?.(-1)
        else return
        event.preventDefault()
      }}
    >
      <title>{says}</title>
      <rect
        x={x}
        y={y}
        width={width}
        height={height}
        fill={`var(--${wash})`}
        className={isMoved || isPending ? css.moved : css.edge}
      />
      {height > 15 && width > 22 && (
        <text x={x + width / 2} y={y + height / 2 + 5} textAnchor="middle" fontSize={14} pointerEvents="none">
          {block.areaCode}
        </text>
      )}
      {block.isPinned && height > 8 && <circle cx={x + width - 6} cy={y + 6} r={2.6} className="ink" pointerEvents="none" />}
    </g>
  )
}

function isMoveTo({ areaCode, to }: PlanMove, block: PlanBlock, startsOn: string): boolean {
  return to !== null && areaCode === block.areaCode && weekOfDay(startsOn, parseISO(to)) === block.week
}

/** Where the largest moves of a draft were, numbered as beside the chart. */
function Ghosts({ chart, plan, moves }: { chart: LoadChart; plan: RoundPlan; moves: readonly PlanMove[] }) {
  return moves.slice(0, MOST_DRAWN_MOVES).map(({ areaCode, from, to }, index) => {
    const column = from === null ? undefined : chart.weeks.find(({ week }) => week === weekOfDay(plan.startsOn, parseISO(from)))
    if (!column) return null
    const height = 22
    const y = Math.max(44, column.top - height - 4)
    return (
      <g key={`${areaCode} ${from} ${to}`} aria-hidden="true">
        <rect x={column.middle - chart.step * 0.4} y={y} width={chart.step * 0.8} height={height} className={css.ghost} />
        <text x={column.middle} y={y + 16} textAnchor="middle" className="hot" fontSize={15} fontWeight={700}>
          {index + 1}
        </text>
      </g>
    )
  })
}

function PendingGhost({ chart, pending: { block, to } }: { chart: LoadChart; pending: PendingMove }) {
  const column = chart.weeks.find(({ week }) => week === to)
  const bar = chart.bars.find((one) => one.block === block)
  if (!column || !bar || to === block.week) return null
  const y = Math.max(30, column.top - bar.height)
  return (
    <g aria-hidden="true" pointerEvents="none">
      <rect x={column.middle - bar.width / 2} y={y} width={bar.width} height={bar.height} className={css.ghost} />
      <text x={column.middle} y={y + bar.height / 2 + 5} textAnchor="middle" fontSize={14} className="hot">
        {block.areaCode}
      </text>
    </g>
  )
}
