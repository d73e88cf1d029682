import type { StockItem, StockOutlook } from '@glandkeeper/contract/stores'
import { useState } from 'react'
import { formatDay } from '../../platform/site-time.ts'
import { formatCount } from '../../ui/count.ts'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { formatAmount } from './amount-words.ts'
import { changesOf, balanceDrawing, type BalanceInput, levelsOf, monthsOf, numbersApart } from './balance-geometry.ts'
import css from './stores.module.css'

const HEIGHT = 260
const LEFT = 44
const RIGHT = 14
const TOP = 30
const BELOW = 30
const FIRST_SHOWN = 12

interface BalancePlotProps {
  item: StockItem
  outlook: StockOutlook
  today: string
  until: string
}

/** The balance over the time of the plan, each change numbered on the plot and named below it. */
export function BalancePlot({ item, outlook, today, until }: BalancePlotProps) {
  const [frame, width] = useMeasuredWidth()
  const { onHand, leastStock } = item
  const balances = changesOf(outlook.balances, { today, onHand })
  return (
    <figure ref={frame} className={css.figure}>
      <figcaption className="soft">
        {item.unit === 'm' ? 'Metres' : 'Pieces'} in the store. Dot: today, by the books. Dashed: as the plan and the open orders
        will leave it.
      </figcaption>
      {width !== null && width > 0 && <Plot input={{ today, until, onHand, leastStock, balances }} item={item} width={width} />}
      <Changes item={item} balances={balances} />
    </figure>
  )
}

function Plot({ input, item, width }: { input: BalanceInput; item: StockItem; width: number }) {
  const right = width - RIGHT
  const bottom = HEIGHT - BELOW
  const drawing = balanceDrawing(input, { left: LEFT, right, top: TOP, bottom })
  const amounts = [0, input.onHand, input.leastStock, ...input.balances.map(({ balance }) => balance)]
  const numbers = numbersApart(drawing.changes)
  return (
    <svg width={width} height={HEIGHT} viewBox={`0 0 ${width} ${HEIGHT}`} role="img" aria-label={plotInWords(item, input)}>
      {levelsOf(Math.min(...amounts), Math.max(...amounts)).map((level) => (
        <g key={level}>
          <path d={`M${LEFT} ${drawing.yOf(level)}H${right}`} className={level === 0 ? 'thin' : `hair ${css.dotted}`} />
          <text x={LEFT - 8} y={drawing.yOf(level) + 4} textAnchor="end">
            {formatCount(level)}
          </text>
        </g>
      ))}
      {monthsOf(input, drawing.xOf, right).map(({ x, label }) => (
        <g key={label}>
          <path d={`M${x} ${bottom}v6`} className="thin" />
          <text x={x} y={bottom + 20} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      {drawing.least !== null && (
        <>
          <path d={`M${LEFT} ${drawing.least}H${right}`} className="hothair" />
          <text x={right} y={drawing.least - 5} textAnchor="end" className={`hot ${css.halo}`}>
            least stock
          </text>
        </>
      )}
      <path d={drawing.path} className={css.course} />
      {drawing.changes.map(({ x, y, isShort }, index) => (
        // Several changes may lie on one day and amount: only their place tells them apart.
        // oxlint-disable-next-line react/no-array-index-key -- see above
        <g key={index}>
          <circle cx={x} cy={y} r="4" className={isShort ? css.markShort : css.mark} />
          {numbers.has(index) && (
            <text x={x} y={y - 9} textAnchor="middle" className={`${isShort ? 'hot ' : ''}${css.halo}`}>
              {index + 1}
            </text>
          )}
        </g>
      ))}
      <circle cx={drawing.start.x} cy={drawing.start.y} r="4.5" className={css.there} />
      <text x={drawing.start.x + 8} y={drawing.start.y - 10} className={`${css.strong} ${css.halo}`}>
        {formatAmount(item.onHand, item.unit)}
      </text>
    </svg>
  )
}

function Changes({ item, balances }: { item: StockItem; balances: readonly StockOutlook['balances'][number][] }) {
  const [showsAll, setShowsAll] = useState(false)
  if (balances.length === 0) return <p className="soft">Nothing is planned to come or go.</p>
  const shown = showsAll ? balances : balances.slice(0, FIRST_SHOWN)
  return (
    <>
      <ol className={css.changes}>
        {shown.map(({ on, balance, says }, index) => (
          // As on the plot.
          // oxlint-disable-next-line react/no-array-index-key -- see above
          <li key={index} className={balance < 0 ? css.short : undefined}>
            <time dateTime={on}>{formatDay(on)}</time>: {says}; then {formatAmount(balance, item.unit)}
          </li>
        ))}
      </ol>
      {shown.length < balances.length && (
        <button type="button" onClick={() => setShowsAll(true)}>
          Show all {balances.length} changes
        </button>
      )}
    </>
  )
}

function plotInWords({ name, unit }: StockItem, { until, onHand, leastStock, balances }: BalanceInput): string {
  const least = Math.min(onHand, ...balances.map(({ balance }) => balance))
  return [
    `${name}: ${formatAmount(onHand, unit)} today`,
    `${formatAmount(balances.at(-1)?.balance ?? onHand, unit)} on ${formatDay(until)}`,
    `at least ${formatAmount(least, unit)} between`,
    `least stock ${formatAmount(leastStock, unit)}`,
  ].join(', ')
}
