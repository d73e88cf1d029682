import { formatChance } from '@glandkeeper/units/format'
import css from './repacks.module.css'

const WIDTH = 72

/** A hairline from 0 to 100 with an upright, and the figure. From half on it is in the colour of what needs a hand. */
export function ChanceMark({ chance }: { chance: number }) {
  const x = chance * WIDTH
  return (
    <span className={chance >= 0.5 ? `${css.chance} hot` : css.chance}>
      <svg width={WIDTH} height="16" viewBox={`0 0 ${WIDTH} 16`} aria-hidden="true">
        <path d={`M0 8H${WIDTH}M.3 5V11M${WIDTH / 2} 5V11M${WIDTH - 0.3} 5V11`} className="hair" />
        <path d={`M${x.toFixed(1)} 1V15`} className={css.upright} />
      </svg>
      <data value={chance}>{formatChance(chance)}</data>
    </span>
  )
}
