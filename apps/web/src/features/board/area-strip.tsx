import type { showBoardSummary } from '@glandkeeper/contract/board'
import type { OkOf } from '@glandkeeper/contract/endpoint'
import { Link } from 'react-router'
import { counted, formatCount } from '../../ui/count.ts'
import { AreaSketch } from './area-sketch.tsx'
import css from './area-strip.module.css'
import { addressWith, type BoardView } from './board-view.ts'

type SummaryArea = OkOf<typeof showBoardSummary>['areas'][number]

/** More areas than this are named without a drawing, or the valves would be pushed off the screen. */
const MOST_DRAWN = 9

/** The areas in walking order; a tally for each valve to book or spent. Pressing one shows its valves, again all. */
export function AreaStrip({ areas, view }: { areas: readonly SummaryArea[]; view: BoardView }) {
  const isDrawn = areas.length <= MOST_DRAWN
  return (
    <nav aria-label="Areas" className={isDrawn ? css.strip : `${css.strip} ${css.dense}`}>
      {areas.map((area) => (
        <Link
          key={area.code}
          to={addressWith(view, { area: view.area === area.code ? null : area.code })}
          aria-current={view.area === area.code ? 'true' : undefined}
          className={css.area}
          // Bigger areas are drawn wider, but not so much that a small one cannot be read.
          style={{ flexGrow: Math.sqrt(area.valves + 1) }}
        >
          {isDrawn && <AreaSketch name={area.name} />}
          <span className={css.name}>{area.name}</span>
          <span className={css.below}>
            <span className="soft">{counted(area.valves, 'valve')}</span>
            {area.bookOrSpent > 0 && <Tally count={area.bookOrSpent} />}
          </span>
        </Link>
      ))}
    </nav>
  )
}

/** Strokes in fives up to ten; past that nobody counts strokes, so the figure stands. */
function Tally({ count }: { count: number }) {
  const words = `${count} to book or spent`
  if (count > 10) {
    return (
      <span className={`hot ${css.count}`} role="img" aria-label={words}>
        {formatCount(count)}
      </span>
    )
  }
  const fives = Math.floor(count / 5)
  const width = fives * 30 + (count % 5) * 5
  return (
    <svg width={width} height="14" role="img" aria-label={words}>
      {Array.from({ length: fives }, (_, five) => (
        <path key={five} d={`M${five * 30 + 3} 1v12m5-12v12m5-12v12m5-12v12M${five * 30} 11l22-9`} className="hotline" />
      ))}
      {Array.from({ length: count % 5 }, (_, stroke) => (
        <path key={stroke} d={`M${fives * 30 + stroke * 5 + 2} 1v12`} className="hotline" />
      ))}
    </svg>
  )
}
