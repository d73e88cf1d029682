import type { Drawing, Shape, TextShape } from '@glandkeeper/drawings/drawing'

/** A drawing as elements; the names of its paints are classes of look.css. */
export function Drawn({ drawing: { width, height, says, shapes } }: { drawing: Drawing }) {
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={says}>
      {shapes.map((shape, index) => (
        // The shapes of one drawing never change places, and several may be alike.
        // oxlint-disable-next-line react/no-array-index-key -- see above
        <Piece key={index} shape={shape} />
      ))}
    </svg>
  )
}

function Piece({ shape }: { shape: Shape }) {
  if (shape.kind === 'text') return <Lettering text={shape} />
  return <path d={shape.d} className={shape.isDashed ? `${shape.paint} dashed` : shape.paint} />
}

function Lettering({ text: { x, y, says, anchor, paint, isBold, size, isDashed, on } }: { text: TextShape }) {
  const classes = [paint, isDashed && 'dashed', on && `on-${on}`].filter(Boolean).join(' ')
  return (
    <text x={x} y={y} textAnchor={anchor} className={classes} style={{ fontSize: size, fontWeight: isBold ? 600 : 400 }}>
      {says}
    </text>
  )
}
