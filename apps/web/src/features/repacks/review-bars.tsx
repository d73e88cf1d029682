import type { OutageReview } from '@glandkeeper/contract/outages'
import { counted } from '../../ui/count.ts'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { barOf, type BarPiece } from './review-words.ts'
import css from './review.module.css'

const HEIGHT = 26
const MOST_OF_ONE = 24

interface BarLine {
  readonly name: string
  readonly pieces: readonly (readonly [BarPiece['kind'], number])[]
  readonly says: string
}

/** Bars to one scale, one under the other, each with its words: a valve is as wide in all of them. */
export function Bars({ lines }: { lines: readonly BarLine[] }) {
  const [measure, width] = useMeasuredWidth()
  const most = Math.max(1, ...lines.map(({ pieces }) => pieces.reduce((sum, [, count]) => sum + count, 0)))
  const pxOfOne = Math.min(MOST_OF_ONE, ((width ?? 0) - 4) / most)
  return (
    <div ref={measure} className={css.bars}>
      {lines.map(({ name, pieces, says }) => (
        <div key={name} className={css.line}>
          <p>
            <b>{name}</b> {says}
          </p>
          <svg width={Math.max(0, width ?? 0)} height={HEIGHT + 2} role="img" aria-label={`${name}: ${says}`}>
            {barOf(pieces, Math.max(0, pxOfOne)).map((piece) => (
              <Piece key={piece.kind} piece={piece} />
            ))}
          </svg>
        </div>
      ))}
    </div>
  )
}

function Piece({ piece: { kind, count, x, width } }: { piece: BarPiece }) {
  return (
    <g>
      <rect x={x + 1} y={1} width={Math.max(1, width)} height={HEIGHT} className={css[looks[kind]]} />
      {width > 9 * String(count).length && (
        <text x={x + 1 + width / 2} y={19} textAnchor="middle" className={css[`on-${looks[kind]}`]}>
          {count}
        </text>
      )}
    </g>
  )
}

/** Solid is what was done, light what was done unplanned; dashed is expected and not there; red is what leaked or was lost. */
const looks = { done: 'solid', 'not done': 'dashed', extra: 'light', leaked: 'hot', due: 'dashed', lost: 'hot' } as const

/** Repacks of crews, or of packing families, with those that leaked. */
export function groupLines(groups: OutageReview['byCrew']): BarLine[] {
  return groups.map(({ name, done, leaked, followUpLost }) => ({
    name,
    pieces: [
      ['leaked', leaked],
      ['done', done - leaked],
    ],
    says: `${counted(done, 'repack')}, ${leaked === 0 ? 'none' : leaked} leaked${followUpLost > 0 ? `, ${counted(followUpLost, 'follow-up')} lost` : ''}`,
  }))
}
