import { formatCount } from '../../ui/count.ts'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { type ChainState, drawChain, LINK } from './chain-geometry.ts'
import { classOfLink, HALF, MIDDLE, pathOfLink } from './chain-links.ts'
import css from './evidence.module.css'

const MOST = 620
/** Room for "broken at 12,034" around its middle. */
const BESIDE = 60

/** The whole record as one chain: solid where it was proved, dashed where not yet, open where it is broken. */
export function ChainDrawing(state: ChainState) {
  const [measure, width] = useMeasuredWidth()
  const hasDashes = state.brokenAt !== null || state.provedTo < state.entries
  return (
    <figure ref={measure} className={css.figure}>
      {width !== null && width > LINK && <Drawing state={state} width={Math.min(width, MOST)} />}
      <figcaption className="soft">
        Solid: proved.{hasDashes && ` Dashed: not proved${state.brokenAt === null ? ' yet' : ' past the break'}.`}
      </figcaption>
    </figure>
  )
}

function Drawing({ state, width }: { state: ChainState; width: number }) {
  const { links, breakX, sealX } = drawChain(state, width)
  const { entries, brokenAt, sealedAt } = state
  const ends = MIDDLE + HALF + 18
  const height = breakX === null ? ends + 6 : ends + 26
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={drawnInWords(state)}>
      {links.map((link) => (
        <path key={link.x} d={pathOfLink(link)} className={classOfLink(link)} />
      ))}
      <text x={0} y={ends}>
        1
      </text>
      {entries > 1 && (
        <text x={Math.max((links.at(-1)?.x ?? 0) + LINK, 40)} y={ends} textAnchor="end">
          {formatCount(entries)}
        </text>
      )}
      {sealX !== null && sealedAt !== null && (
        <>
          <path d={`M${sealX} ${MIDDLE - HALF - 2}V${MIDDLE - HALF - 10}`} className="thin" />
          <text x={sealX} y={MIDDLE - HALF - 14} textAnchor={anchorAt(sealX, width)} className="soft">
            signed at {formatCount(sealedAt)}
          </text>
        </>
      )}
      {breakX !== null && brokenAt !== null && (
        <>
          <path d={`M${breakX} ${MIDDLE + HALF + 6}V${ends + 8}`} className="hothair" />
          <text x={breakX} y={ends + 21} textAnchor={anchorAt(breakX, width)} className="hot">
            broken at {formatCount(brokenAt)}
          </text>
        </>
      )}
    </svg>
  )
}

/** Lettering stays inside the drawing at both ends. */
function anchorAt(x: number, width: number): 'start' | 'middle' | 'end' {
  if (x < BESIDE) return 'start'
  return x > width - BESIDE ? 'end' : 'middle'
}

function drawnInWords({ entries, provedTo, brokenAt, sealedAt }: ChainState): string {
  return [
    `Chain of ${formatCount(entries)} entries`,
    provedTo > 0 ? `proved up to entry ${formatCount(provedTo)}` : 'not proved',
    brokenAt !== null && `broken at entry ${formatCount(brokenAt)}`,
    sealedAt !== null && `last signed at entry ${formatCount(sealedAt)}`,
  ]
    .filter((part) => part !== false)
    .join(', ')
}
