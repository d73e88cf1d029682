import type { CSSProperties } from 'react'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { formatMetres } from './amount-words.ts'
import { endInWords, reelInWords } from './kit-words.ts'
import type { ReelToCut } from './queries.ts'
import { metreMarks, reelBar, reelScale } from './reel-geometry.ts'
import css from './kit.module.css'

const BAR = 30
const RULER = 24
/** Half of the outline, so that it is not cut off at the ends. */
const EDGE = 1

/** All reels to one scale, with a ruler below the last. */
export function Reels({ reels }: { reels: readonly ReelToCut[] }) {
  const [frame, width] = useMeasuredWidth()
  const scale = width === null ? 0 : reelScale(reels, width - 2 * EDGE)
  const longest = Math.max(...reels.map(({ length }) => length))
  return (
    <ol ref={frame} className={css.reels}>
      {reels.map((reel, index) => (
        // A reel may come twice: as it was issued, and as it is in the store.
        // oxlint-disable-next-line react/no-array-index-key -- see above
        <li key={index}>
          <div className={css.label}>
            <b>{reel.label}</b>
            <span>
              batch <span className="let">{reel.batch}</span>
            </span>
            <span>{formatMetres(reel.length)} before</span>
            <span>{endInWords(reel)}</span>
          </div>
          {scale > 0 && <ReelBarDrawn reel={reel} pxPerMm={scale} style={asShare(reel.length, longest)} />}
          <ol className={css.steps}>
            {reel.pieces.map(({ tag, length, count, says }) => (
              <li key={`${tag} ${length}`}>
                <span className="let">
                  {tag}: {count > 1 && `${count} × `}
                  {Math.round(length)} mm
                </span>{' '}
                <span className="soft">{says}</span>
              </li>
            ))}
          </ol>
        </li>
      ))}
      {scale > 0 && <Ruler longest={longest} pxPerMm={scale} />}
    </ol>
  )
}

/** On paper, which has a width of its own, all reels shrink by the same. */
function asShare(length: number, longest: number): CSSProperties {
  return { '--share': `${((length / longest) * 100).toFixed(3)}%` } as CSSProperties
}

interface ReelBarProps {
  reel: ReelToCut
  pxPerMm: number
  style: CSSProperties
}

function ReelBarDrawn({ reel, pxPerMm, style }: ReelBarProps) {
  const bar = reelBar(reel, pxPerMm)
  return (
    <svg
      width={bar.width + 2 * EDGE}
      height={BAR + 2 * EDGE}
      viewBox={`${-EDGE} ${-EDGE} ${bar.width + 2 * EDGE} ${BAR + 2 * EDGE}`}
      role="img"
      aria-label={reelInWords(reel)}
      style={style}
    >
      {bar.parts.map(({ x, width, piece, lettering }) => (
        <g key={x}>
          <rect x={x} y="0" width={width} height={BAR} className={partClass(piece !== null, reel.isScrap)} />
          {lettering !== '' && (
            <text x={x + width / 2} y={BAR / 2 + 5} textAnchor="middle" className={lettersClass(piece !== null, reel.isScrap)}>
              {lettering}
            </text>
          )}
        </g>
      ))}
      <rect x="0" y="0" width={bar.width} height={BAR} className="out" />
    </svg>
  )
}

/** A piece has the wash of packing, an end that goes back is plain paper, and scrap is hatched. */
function partClass(isPiece: boolean, isScrap: boolean): string {
  if (isPiece) return `thin ${css.piece}`
  return isScrap ? `thin ${css.scrap}` : `thin ${css.goesBack}`
}

function lettersClass(isPiece: boolean, isScrap: boolean): string | undefined {
  if (isPiece) return css.onPack
  return isScrap ? css.onScrap : 'soft'
}

function Ruler({ longest, pxPerMm }: { longest: number; pxPerMm: number }) {
  const width = longest * pxPerMm + 2 * EDGE
  return (
    <li aria-hidden="true">
      <svg width={width} height={RULER} viewBox={`${-EDGE} 0 ${width} ${RULER}`} style={asShare(1, 1)}>
        <path d={`M0 1H${longest * pxPerMm}`} className="hair" />
        {metreMarks(longest, pxPerMm).map(({ x, label }) => (
          <g key={x}>
            <path d={`M${x} 1v6`} className="thin" />
            <text x={x} y="20" textAnchor={x < 10 ? 'start' : x > width - 16 ? 'end' : 'middle'}>
              {label}
            </text>
          </g>
        ))}
      </svg>
    </li>
  )
}
