import type { RepackPlan } from '@glandkeeper/contract/repack-plans'
import { format } from 'date-fns'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { slotAxis, type SlotAxis } from './axis-geometry.ts'
import { axisPlaces, Block, Column, OutageMark } from './axis-pieces.tsx'
import { useSiteToday } from '../people/index.tsx'
import css from './axis.module.css'

interface SlotAxisProps {
  plan: RepackPlan
  from: number
  onFrom: (from: number) => void
  chosen: string | null
  onChoose: (slotId: string) => void
}

/** The slots of a plan over its weeks: how many repacks are in each, and how much of its hours they take. */
export function SlotAxisDrawing(props: SlotAxisProps) {
  const [measure, width] = useMeasuredWidth()
  return (
    <div ref={measure} className={css.axis}>
      {width !== null && width > 0 && <Drawn {...props} width={width} />}
    </div>
  )
}

function Drawn({ plan, from, onFrom, chosen, onChoose, width }: SlotAxisProps & { width: number }) {
  const axis = slotAxis({ plan, from, width })
  const places = axisPlaces(axis.rows)
  return (
    <>
      {(axis.earlier !== null || axis.later !== null) && (
        <div className={css.steps}>
          <Step words="Earlier" to={axis.earlier} onFrom={onFrom} />
          <Step words="Later" to={axis.later} onFrom={onFrom} />
        </div>
      )}
      <svg width={width} height={places.height} role="group" aria-label="Slots of the plan, and how much of their hours is used">
        <Ground axis={axis} places={places} />
        <Today axis={axis} bottom={places.base} />
        {axis.blocks.map((block) => (
          <OutageMark key={block.slot.slotId} block={block} places={places} />
        ))}
        {axis.blocks.map((block) => (
          <Block
            key={block.slot.slotId}
            block={block}
            isChosen={block.slot.slotId === chosen}
            onChoose={() => onChoose(block.slot.slotId)}
          />
        ))}
        {axis.columns.map((column) => (
          <Column
            key={column.slot.slotId}
            {...{ column, axis, places }}
            isChosen={column.slot.slotId === chosen}
            onChoose={() => onChoose(column.slot.slotId)}
          />
        ))}
      </svg>
    </>
  )
}

function Step({ words, to, onFrom }: { words: string; to: number | null; onFrom: (from: number) => void }) {
  return (
    <button type="button" disabled={to === null} onClick={() => to !== null && onFrom(to)}>
      {words}
    </button>
  )
}

/** Scale of the hours, base line and months. */
function Ground({ axis, places }: { axis: SlotAxis; places: ReturnType<typeof axisPlaces> }) {
  const { left, right, months } = axis
  return (
    <g aria-hidden="true">
      {[0, 0.5, 1].map((share) => {
        const y = places.base - share * places.bars
        return (
          <g key={share}>
            <path d={`M${left} ${y}H${right}`} className="hair" strokeDasharray="1 4" />
            <text x={left - 6} y={y + 5} textAnchor="end">
              {share * 100}
              {share === 1 && ' %'}
            </text>
          </g>
        )
      })}
      <path d={`M${left} ${places.base}H${right}`} className="out" />
      {months.map(({ x, name }) => (
        <g key={name + String(x)}>
          <path d={`M${x} ${places.base + 24}V${places.height - 2}`} className="thin" />
          <text x={x + 5} y={places.height - 6}>
            {name}
          </text>
        </g>
      ))}
    </g>
  )
}

function Today({ axis: { left, right, xOf }, bottom }: { axis: SlotAxis; bottom: number }) {
  const x = xOf(format(useSiteToday(), 'yyyy-MM-dd'))
  if (x < left || x > right) return null
  return (
    <g aria-hidden="true">
      <path d={`M${x} 0V${bottom}`} className="thin" />
      <text x={x + 4} y={11} className="soft">
        today
      </text>
    </g>
  )
}
