import type { RepackSlot } from '@glandkeeper/contract/repack-plans'
import { trades } from '@glandkeeper/contract/outages'
import { getISOWeek, parseISO } from 'date-fns'
import type { KeyboardEvent, ReactNode } from 'react'
import { counted } from '../../ui/count.ts'
import { BLOCK_WIDTH, type FortnightColumn, type OutageBlock, type SlotAxis, type TradeBar } from './axis-geometry.ts'
import css from './axis.module.css'
import { figureOfHours, firstDayInWords, slotInWords, usedInWords } from './slot-words.ts'

const TOP = 16
const BLOCK_HEIGHT = 100
const BLOCK_ROW = 110
const MARK_ROW = 16
const MARK = 12
const COUNT = 22
const BARS = 90
const BLOCK_BARS = 46
const FOOT = 48

type AxisPlaces = ReturnType<typeof axisPlaces>

/** From top to bottom: rows of outages, their days, columns of fortnights, weeks and months. */
export function axisPlaces(rows: number) {
  const mark = TOP + rows * BLOCK_ROW
  const base = mark + rows * MARK_ROW + COUNT + BARS
  return { mark, base, bars: BARS, top: base - BARS - COUNT, height: base + FOOT }
}

interface ChoiceProps {
  isChosen: boolean
  onChoose: () => void
}

/** What is pressed: with a finger, or by keyboard, where arrows go to the slot before and after. */
function SlotButton({ slot, isChosen, onChoose, children }: ChoiceProps & { slot: RepackSlot; children: ReactNode }) {
  const says = slotSays(slot)
  const press = (event: KeyboardEvent<SVGGElement>) => {
    const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key] ?? 0
    if (event.key === 'Enter' || event.key === ' ') onChoose()
    else if (by !== 0) focusBeside(event.currentTarget, by)
    else return
    event.preventDefault()
  }
  return (
    <g
      role="button"
      tabIndex={0}
      aria-pressed={isChosen}
      aria-label={says}
      className={css.slot}
      onClick={onChoose}
      onKeyDown={press}
    >
      <title>{says}</title>
      {children}
    </g>
  )
}

function focusBeside(slot: SVGGElement, by: number) {
  const all = [...(slot.ownerSVGElement?.querySelectorAll<SVGGElement>('[role=button]') ?? [])]
  all[all.indexOf(slot) + by]?.focus()
}

function slotSays(slot: RepackSlot): string {
  const days = slot.kind === 'outage' ? `, ${firstDayInWords(slot)}` : ''
  const hours = trades.map((trade) => `${trade} ${usedInWords(slot, trade)}`).join(', ')
  return `${slotInWords(slot)}${days}, ${counted(slot.repacks, 'repack')}, ${hours}`
}

/** An outage: its name, its repacks, and three bars with their figures. */
export function Block({ block, ...choice }: ChoiceProps & { block: OutageBlock }) {
  const { slot, x, row, bars } = block
  const y = TOP + row * BLOCK_ROW
  const base = y + BLOCK_HEIGHT - 8
  return (
    <SlotButton slot={slot} {...choice}>
      <rect x={x} y={y} width={BLOCK_WIDTH} height={BLOCK_HEIGHT} className={choice.isChosen ? css.chosenBlock : css.block} />
      <text x={x + 10} y={y + 18} className={css.name}>
        {shortened(slot.name, 20)}
      </text>
      <text x={x + 10} y={y + 36}>
        {counted(slot.repacks, 'repack')}
      </text>
      <Bars bars={bars} base={base} height={BLOCK_BARS} barWidth={10} />
      {trades.map((trade, index) => (
        <text key={trade} x={x + 58} y={base - BLOCK_BARS + 12 + index * 16} className={isOver(bars[index]) ? 'hot' : undefined}>
          {`${trade.charAt(0).toUpperCase()} ${figureOfHours(slot.used[trade])} of ${figureOfHours(slot.hours[trade])} h`}
        </text>
      ))}
    </SlotButton>
  )
}

function shortened(name: string, most: number): string {
  return name.length > most ? `${name.slice(0, most - 1).trimEnd()}…` : name
}

/** A fortnight: how many repacks, three bars, its first week. */
export function Column({
  column: { slot, x, middle, bars },
  axis: { step, barWidth },
  places,
  ...choice
}: ChoiceProps & { column: FortnightColumn; axis: SlotAxis; places: AxisPlaces }) {
  const isRoomy = step >= 34
  return (
    <SlotButton slot={slot} {...choice}>
      <rect
        x={x + 1}
        y={places.top}
        width={step - 2}
        height={places.base - places.top + 22}
        className={choice.isChosen ? css.chosenColumn : css.target}
      />
      <text x={middle} y={places.top + 16} textAnchor="middle" className={slot.repacks > 0 ? `${css.name} ${css.count}` : 'soft'}>
        {slot.repacks > 0 ? slot.repacks : '–'}
      </text>
      <Bars bars={bars} base={places.base} height={BARS} barWidth={barWidth} />
      <text x={middle} y={places.base + 17} textAnchor="middle" className="soft">
        {isRoomy ? `w ${getISOWeek(parseISO(slot.earliestOn))}` : getISOWeek(parseISO(slot.earliestOn))}
      </text>
    </SlotButton>
  )
}

const isOver = (bar: TradeBar | undefined) => bar !== undefined && bar.share > 1.0005

/** The hours there as an outline, those used filled; over its brim in the colour of what needs a hand. */
function Bars({ bars, base, height, barWidth }: { bars: readonly TradeBar[]; base: number; height: number; barWidth: number }) {
  return bars.map((bar) => {
    const { trade, x, share, isThere } = bar
    const used = Math.min(1.12, share) * height
    return (
      <g key={trade}>
        {isThere ? (
          <rect x={x} y={base - height} width={barWidth} height={height} className={css.there} />
        ) : (
          <path d={`M${x} ${base - 2}H${x + barWidth}`} className="thin" />
        )}
        {used > 0 && <rect x={x} y={base - used} width={barWidth} height={used} className={isOver(bar) ? css.over : css.used} />}
      </g>
    )
  })
}

/** When it is: solid where it is likely, dashed from its earliest to its latest; and as a band through the fortnights. */
export function OutageMark({ block: { days, row }, places }: { block: OutageBlock; places: AxisPlaces }) {
  const { earliest, likely, likelyEnd, latestEnd } = days
  const solid = Math.max(2, likelyEnd - likely)
  const y = places.mark + row * MARK_ROW
  return (
    <g aria-hidden="true">
      <path d={`M${likely + solid / 2} ${TOP + row * BLOCK_ROW + BLOCK_HEIGHT}V${y}`} className="hair" />
      <rect x={likely} y={y + MARK} width={solid} height={places.base - y - MARK} className={css.band} />
      <rect x={earliest} y={y} width={Math.max(2, latestEnd - earliest)} height={MARK} className={css.may} />
      <rect x={likely} y={y} width={solid} height={MARK} className={css.likely} />
    </g>
  )
}
