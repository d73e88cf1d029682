import type { StockItem, StockOutlook } from '@glandkeeper/contract/stores'
import { formatDay } from '../../platform/site-time.ts'
import { formatAmount } from './amount-words.ts'
import { balanceDrawing, changesOf } from './balance-geometry.ts'
import css from './stores.module.css'

const WIDTH = 200
const HEIGHT = 40
const FRAME = { left: 3, right: WIDTH - 2, top: 4, bottom: HEIGHT - 4 }

interface SparklineProps {
  item: StockItem
  outlook: StockOutlook
  today: string
  until: string
}

/** The balance over the time of the plan, with the zero line and the least stock: worked out, so dashed; today is measured. */
export function Sparkline({ item: { onHand, leastStock, unit, name }, outlook, today, until }: SparklineProps) {
  const balances = changesOf(outlook.balances, { today, onHand })
  const drawing = balanceDrawing({ today, until, onHand, leastStock, balances }, FRAME)
  const last = outlook.balances.at(-1)?.balance ?? onHand
  const firstShort = drawing.changes.find(({ isShort }) => isShort)
  const says = `${name}: ${formatAmount(onHand, unit)} today, ${formatAmount(last, unit)} on ${formatDay(until)}`
  return (
    <svg width={WIDTH} height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={says}>
      <path d={`M${FRAME.left} ${drawing.zero}H${FRAME.right}`} className="thin" />
      {drawing.least !== null && <path d={`M${FRAME.left} ${drawing.least}H${FRAME.right}`} className="hothair" />}
      <path d={drawing.path} className={css.stair} />
      <circle cx={drawing.start.x} cy={drawing.start.y} r="3" className={css.there} />
      {firstShort && <circle cx={firstShort.x} cy={firstShort.y} r="3" className="hotfill" />}
    </svg>
  )
}
