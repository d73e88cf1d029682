import { formatChance } from '@glandkeeper/units/format'
import css from './forecast.module.css'

const WIDTH = 72
const HEIGHT = 16

/** A hairline from 0 to 100 with an upright, and the figure. From half on it is in the colour of what needs a hand. */
export function Chance({ chance }: { chance: number | null }) {
  if (chance === null) return <span className={css.unknown}>not known</span>
  const x = chance * WIDTH
  return (
    <span className={chance >= 0.5 ? `${css.chance} hot` : css.chance}>
      <svg width={WIDTH} height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        <path d={`M0 8H${WIDTH}M.3 5V11M${WIDTH / 2} 5V11M${WIDTH - 0.3} 5V11`} className="hair" />
        <path d={`M${x.toFixed(1)} 1V15`} className={css.upright} />
      </svg>
      <data value={chance}>{formatChance(chance)}</data>
    </span>
  )
}

/** The scale in the heading of a column of chances. */
export function ChanceScale() {
  return (
    <svg width={WIDTH} height="14" viewBox={`0 0 ${WIDTH} 14`} aria-hidden="true">
      <text className="soft" x="0" y="11">
        0
      </text>
      <text className="soft" x={WIDTH} y="11" textAnchor="end">
        100 %
      </text>
    </svg>
  )
}
