import type { ComparedPacking } from '@glandkeeper/contract/packing-lives'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import css from './lives.module.css'
import { medianInWords } from './lives-words.ts'
import { type Stair, stairsFrame, type StairsFrame } from './stairs-geometry.ts'

const MOST = 1200

type Packings = readonly ComparedPacking[]

/** The share of packings not worn out yet, over the months in the box. */
export function StairsPlot({ packings }: { packings: Packings }) {
  const [measure, width] = useMeasuredWidth()
  return (
    <figure ref={measure} className={css.plot}>
      <figcaption>
        Share of packings not worn out, %, over months in the box{' '}
        <span className="soft">bands: limits that hold 95 times in 100 · under the axis: lives watched so long</span>
      </figcaption>
      {width !== null && width > 0 && <Drawn packings={packings} width={Math.min(width, MOST)} />}
    </figure>
  )
}

function Drawn({ packings, width }: { packings: Packings; width: number }) {
  const frame = stairsFrame(packings, width)
  return (
    <svg
      width={width}
      height={frame.height}
      viewBox={`0 0 ${width} ${frame.height}`}
      role="img"
      aria-label={plotInWords(packings)}
    >
      <Ground frame={frame} />
      {frame.stairs.map(({ family, band, isTooFew }) => !isTooFew && <path key={family} d={band} className={css.band} />)}
      {frame.stairs.map(({ family, path, dash, isTooFew }) => (
        <path key={family} d={path} className={isTooFew ? css.few : css.stair} strokeDasharray={dash} />
      ))}
      {frame.stairs.map((stair) => (
        <Label key={stair.family} stair={stair} frame={frame} />
      ))}
      {frame.stairs.map((stair) => (
        <Watched key={stair.family} stair={stair} frame={frame} />
      ))}
    </svg>
  )
}

function Ground({ frame: { left, right, top, base, levels, times } }: { frame: StairsFrame }) {
  return (
    <>
      <rect x={left} y={top} width={right - left} height={base - top} className="paperfill" />
      {levels.map(({ y, label }) => (
        <g key={label}>
          <path d={`M${left} ${y}H${right}`} className={`hair ${css.dotted}`} />
          <text x={left - 8} y={y + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      <path d={`M${left} ${base}H${right}${times.map(({ x }) => `M${x} ${base}v6`).join('')}`} className="thin" />
      {times.map(({ x, label }) => (
        <text key={label} x={x} y={base + 20} textAnchor="middle">
          {label}
        </text>
      ))}
    </>
  )
}

/** At the end of its line; a hairline leads there where the line ends early or the label had to move. */
function Label({ stair, frame }: { stair: Stair; frame: StairsFrame }) {
  const { endX, endY, labelY, dash } = stair
  const x = frame.right + 6
  return (
    <>
      <path d={`M${endX} ${endY}H${frame.right - 4}L${x} ${labelY}`} className={`hair ${css.dotted}`} />
      {frame.hasNames && (
        <path d={`M${x} ${labelY}h26`} className={stair.isTooFew ? css.few : css.stair} strokeDasharray={dash} />
      )}
      <text x={frame.hasNames ? x + 32 : x + 2} y={labelY + 4} className={stair.isTooFew ? 'soft' : css.name}>
        {frame.hasNames ? `${stair.letter} ${shortened(stair.family)}` : stair.letter}
      </text>
    </>
  )
}

function Watched({ stair: { family, letter, rowY, atRisk, isTooFew }, frame }: { stair: Stair; frame: StairsFrame }) {
  return (
    <>
      {atRisk.map(({ x, lives }) => (
        <text key={x} x={x} y={rowY} textAnchor="middle" className={isTooFew ? 'soft' : undefined}>
          {lives}
        </text>
      ))}
      <text x={frame.hasNames ? frame.right + 38 : frame.right + 8} y={rowY} className="soft">
        {frame.hasNames ? `${letter} ${shortened(family)}` : letter}
      </text>
    </>
  )
}

const MOST_LETTERS = 24

function shortened(name: string): string {
  return name.length > MOST_LETTERS ? `${name.slice(0, MOST_LETTERS - 1)}…` : name
}

function plotInWords(packings: Packings): string {
  return packings.map((packing) => `${packing.family}: ${medianInWords(packing)}`).join('; ')
}
