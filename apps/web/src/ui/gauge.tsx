import type { SVGProps } from 'react'
import { FACE_X, gaugeGeometry, gaugeInWords, mostShownX, xAt, type GaugeFigures } from './gauge-geometry.ts'

const WIDTH = 120
/** Across the stem the drawing is 32 high and only that direction is squeezed. */
const DRAWN_HEIGHT = 32
const BLOCK_WIDTH = 7

interface GaugeProps extends GaugeFigures {
  height?: number
}

/** The stuffing box on its side, the follower where it stands. Solid is measured, dashed is worked out or not known. */
export function Gauge({ height = DRAWN_HEIGHT, ...figures }: GaugeProps) {
  const { blockX, packingTopX, isBroken, keepClearX } = gaugeGeometry(figures)
  const y = (v: number) => (v * height) / DRAWN_HEIGHT
  return (
    <svg width={WIDTH} height={height} viewBox={`0 0 ${WIDTH} ${height}`} role="img" aria-label={gaugeInWords(figures)}>
      <Both y={y} from={1} thick={5} x={4} width={50} className="steel" />
      {packingTopX !== null && <Both y={y} from={6} thick={6} x={4} width={packingTopX - 4} className="pack" />}
      {blockX !== null && <Nose y={y} from={packingTopX ?? FACE_X} to={blockX} />}
      <path d={`M4 ${y(1)}H54V${y(6)}M4 ${y(31)}H54V${y(26)}M4 ${y(12)}H118M4 ${y(20)}H118`} className="thin" />
      <path d={`M0 ${y(16)}H${WIDTH}`} className="centre" />
      {blockX === null ? <Somewhere y={y} /> : <Follower y={y} x={blockX} isInferred={figures.gapIsInferred} />}
      {isBroken && <BreakMark y={y} x={mostShownX - 9} />}
      <path d={`M4 0l-2 ${y(8)}l4 ${y(8)}l-4 ${y(8)}l2 ${y(8)}`} className="hair" />
      <path d={`M${keepClearX} -2V${height + 2}`} className="hotline" />
    </svg>
  )
}

type Across = (v: number) => number

interface BothProps extends Omit<SVGProps<SVGRectElement>, 'y' | 'from' | 'height'> {
  y: Across
  from: number
  thick: number
}

/** The same rectangle on both sides of the stem. */
function Both({ y, from, thick, ...rect }: BothProps) {
  return (
    <>
      <rect y={y(from)} height={y(thick)} {...rect} />
      <rect y={y(DRAWN_HEIGHT - from - thick)} height={y(thick)} {...rect} />
    </>
  )
}

function Nose({ y, from, to }: { y: Across; from: number; to: number }) {
  return (
    <Both
      y={y}
      from={6}
      thick={6}
      x={from}
      width={Math.max(to - from, 0)}
      fill="var(--sheet)"
      stroke="var(--ink)"
      strokeWidth=".9"
    />
  )
}

function Follower({ y, x, isInferred }: { y: Across; x: number; isInferred: boolean }) {
  if (!isInferred) return <Both y={y} from={2} thick={10} x={x} width={BLOCK_WIDTH} fill="var(--ink)" />
  return (
    <Both y={y} from={2} thick={10} x={x} width={BLOCK_WIDTH} fill="var(--sheet)" stroke="var(--ink)" strokeDasharray="3 2" />
  )
}

/** Nobody has measured: the follower is somewhere along this dashed stretch. */
function Somewhere({ y }: { y: Across }) {
  return <Both y={y} from={4} thick={6} x={xAt(0) + 2} width={mostShownX - xAt(0)} className="ghost" />
}

function BreakMark({ y, x }: { y: Across; x: number }) {
  const cut = `M${x} ${y(4)}l3 ${y(10)}M${x + 4} ${y(4)}l3 ${y(10)}M${x} ${y(18)}l3 ${y(10)}M${x + 4} ${y(18)}l3 ${y(10)}`
  return (
    <>
      <path d={cut} stroke="var(--paper)" strokeWidth="3.4" />
      <path d={cut} className="thin" />
    </>
  )
}

/** The scale in the heading of a column of gauges. */
export function GaugeScale() {
  return (
    <svg width={WIDTH} height="30" role="img" aria-label="Gap in millimetres from the box face">
      <text className="soft" x="0" y="11">
        Gap, mm from box face
      </text>
      {[0, 5, 10, 15].map((mm) => (
        <g key={mm}>
          <text className="soft" x={xAt(mm)} y="25" textAnchor="middle" style={{ fontSize: 12 }}>
            {mm}
          </text>
          <path d={`M${xAt(mm)} 27V31`} className="thin" />
        </g>
      ))}
    </svg>
  )
}
