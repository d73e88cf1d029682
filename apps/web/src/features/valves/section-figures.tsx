import { type Dimension, heightOf, type Label } from './section-labels.ts'
import type { Point } from './section-geometry.ts'
import look from './section-drawing.module.css'

const LEAST_FOR_INSIDE_ARROWS = 26
const OUTSIDE_ARROW = 16

const line = ([x0, y0]: Point, [x1, y1]: Point) => `M${x0.toFixed(1)} ${y0.toFixed(1)}L${x1.toFixed(1)} ${y1.toFixed(1)}`

/** A dimension line with its extensions; a short one gets its arrows from outside. */
export function Dimensioned({ dimension: { from, to, extensions, isGuess } }: { dimension: Dimension }) {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const dashes = isGuess ? ` ${look.guessed}` : ''
  return (
    <>
      <path d={extensions.map(([a, b]) => line(a, b)).join('')} className="hair" />
      {length >= LEAST_FOR_INSIDE_ARROWS ? (
        <path d={line(from, to)} className={`dim${dashes}`} />
      ) : (
        <ShortDimension from={from} to={to} dashes={dashes} />
      )}
    </>
  )
}

function ShortDimension({ from, to, dashes }: { from: Point; to: Point; dashes: string }) {
  const isUpright = Math.abs(to[0] - from[0]) < 0.5
  const [low, high] = (isUpright ? from[1] <= to[1] : from[0] <= to[0]) ? [from, to] : [to, from]
  const away = ([x, y]: Point, px: number): Point => (isUpright ? [x, y + px] : [x + px, y])
  return (
    <>
      <path d={line(from, to)} className={`thin${dashes}`} />
      <path d={line(away(low, -OUTSIDE_ARROW), low)} className={`dim ${look.endOnly}`} />
      <path d={line(away(high, OUTSIDE_ARROW), high)} className={`dim ${look.endOnly}`} />
    </>
  )
}

export function Labelled({ label: { at, anchor, lines, leader, isHot } }: { label: Label }) {
  return (
    <>
      {leader.length > 1 && (
        <polyline
          points={leader.map((point) => point.map((value) => value.toFixed(1)).join(' ')).join(',')}
          className={isHot ? look.hotLeader : 'hair'}
        />
      )}
      {lines.map(({ text, tone, isGuess }, index) => (
        <text
          key={text}
          x={at[0]}
          y={at[1] + heightOf(lines.slice(0, index + 1)) - 4}
          textAnchor={anchor}
          className={`${look[tone]}${isGuess ? ` ${look.guessedFigure}` : ''}`}
        >
          {text}
        </text>
      ))}
    </>
  )
}
