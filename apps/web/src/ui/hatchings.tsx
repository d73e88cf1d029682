/** The pattern and marker definitions every drawing refers to by id. Rendered once, in the shell. */
export function Hatchings() {
  return (
    <svg width="0" height="0" style={{ position: 'absolute' }} aria-hidden="true">
      <defs>
        <Hatch id="h-steel" size={5} lines="M0 0V5" angle={45} wash="--wash-steel" />
        <Hatch id="h-steel2" size={5} lines="M0 0V5" angle={-45} wash="--wash-steel" />
        <Hatch id="h-pack" size={4.2} lines="M0 0V4.2M0 0H4.2" angle={45} wash="--wash-pack" />
        <pattern id="h-medium" width="8" height="8" patternUnits="userSpaceOnUse">
          <rect width="8" height="8" fill="var(--wash-medium)" />
          <g fill="var(--hatch)">
            <circle cx="2" cy="2" r=".8" />
            <circle cx="6" cy="6" r=".8" />
          </g>
        </pattern>
        <pattern id="h-over" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V4" stroke="var(--accent)" strokeWidth="1.6" />
        </pattern>
        <marker
          id="arrow"
          viewBox="0 0 10 6"
          refX="10"
          refY="3"
          markerWidth="9"
          markerHeight="6"
          markerUnits="userSpaceOnUse"
          orient="auto-start-reverse"
        >
          <path d="M0 .6L10 3L0 5.4Z" fill="var(--ink)" />
        </marker>
        <marker
          id="arrow-hot"
          viewBox="0 0 10 6"
          refX="10"
          refY="3"
          markerWidth="10"
          markerHeight="7"
          markerUnits="userSpaceOnUse"
          orient="auto"
        >
          <path d="M0 0L10 3L0 6Z" fill="var(--accent)" />
        </marker>
      </defs>
    </svg>
  )
}

interface HatchProps {
  id: string
  size: number
  lines: string
  angle: number
  wash: string
}

function Hatch({ id, size, lines, angle, wash }: HatchProps) {
  return (
    <pattern id={id} width={size} height={size} patternUnits="userSpaceOnUse" patternTransform={`rotate(${angle})`}>
      <rect width={size} height={size} fill={`var(${wash})`} />
      <path d={lines} stroke="var(--hatch)" strokeWidth=".7" />
    </pattern>
  )
}
