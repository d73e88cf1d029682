import type { Outage } from '@glandkeeper/contract/outages'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import css from './axis.module.css'
import { outageScale } from './outage-scale.ts'

/** When an outage is, beside the others: solid where it is likely, dashed where it may be. The words say the same. */
export function OutageDaysDrawing({ outage, among }: { outage: Outage; among: readonly Outage[] }) {
  const [measure, width] = useMeasuredWidth()
  return (
    <div ref={measure} className={css.days} aria-hidden="true">
      {width !== null && width > 0 && <Drawn outage={outage} among={among} width={width} />}
    </div>
  )
}

const BASE = 24

function Drawn({ outage, among, width }: { outage: Outage; among: readonly Outage[]; width: number }) {
  const scale = outageScale(among, width)
  const { earliest, likely, likelyEnd, latestEnd } = scale.daysOf(outage)
  return (
    <svg width={width} height={BASE + 20}>
      <path d={scale.months.map(({ x }) => `M${x} ${BASE}v5`).join('')} className="thin" />
      <path d={`M${scale.months[0]?.x ?? 0} ${BASE}H${scale.months.at(-1)?.x ?? width}`} className="thin" />
      {scale.months.map(({ x, name }) => (
        <text key={x} x={x + 3} y={BASE + 17} className="soft">
          {name}
        </text>
      ))}
      <rect x={earliest} y={4} width={Math.max(2, latestEnd - earliest)} height={BASE - 4} className={css.may} />
      <rect x={likely} y={4} width={Math.max(2, likelyEnd - likely)} height={BASE - 4} className={css.likely} />
    </svg>
  )
}
