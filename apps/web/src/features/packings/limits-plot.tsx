import type { SiteFamily } from '@glandkeeper/contract/packings'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { type Bar, BAR_HEIGHT, limitsFrame, type LimitsFrame } from './limits-geometry.ts'
import css from './packings.module.css'

/** A label centred nearer to the edge than this would stick out. */
const HALF_A_LABEL = 14

/** Temperature and pressure each family stands, side by side on common axes. */
export function LimitsPlot({ families }: { families: readonly SiteFamily[] }) {
  const [measure, width] = useMeasuredWidth()
  return (
    <figure ref={measure} className={css.plot}>
      <figcaption className="soft">
        upright: highest in steam · solid: confirmed here · dashed: a default, nobody here has vouched for it
      </figcaption>
      {width !== null && width > 0 && <Plot families={families} width={width} />}
    </figure>
  )
}

function Plot({ families, width }: { families: readonly SiteFamily[]; width: number }) {
  const frame = limitsFrame(families, width)
  return (
    <svg
      width={width}
      height={frame.height}
      viewBox={`0 0 ${width} ${frame.height}`}
      role="img"
      aria-label={`Limits of ${families.length} packing families; the figures stand in the table below`}
    >
      <Axis ticks={frame.temperatureTicks} unit="°C" frame={frame} />
      <Axis ticks={frame.pressureTicks} unit="bar" frame={frame} />
      {frame.rows.map((row) => (
        <g key={row.name}>
          <text x={0} y={row.labelY} className={css.name}>
            {row.name}
          </text>
          <LimitBar bar={row.temperature} y={row.barY} />
          <path d={`M${row.steamX} ${row.barY - 3}V${row.barY + BAR_HEIGHT + 3}`} className="out" />
          <LimitBar bar={row.pressure} y={row.barY} />
        </g>
      ))}
    </svg>
  )
}

function Axis({ ticks, unit, frame }: { ticks: LimitsFrame['pressureTicks']; unit: string; frame: LimitsFrame }) {
  const first = ticks[0]
  const last = ticks.at(-1)
  return (
    <>
      <path d={ticks.map(({ x }) => `M${x} ${frame.top - 6}V${frame.bottom}`).join('')} className={`hair ${css.grid}`} />
      {first && last && <path d={`M${first.x} ${frame.top - 6}H${last.x}`} className="thin" />}
      {ticks.map(({ x, label }, index) => (
        <text
          key={label}
          x={x}
          y={frame.top - 12}
          textAnchor={index === ticks.length - 1 ? 'end' : x < HALF_A_LABEL ? 'start' : 'middle'}
        >
          {index === ticks.length - 1 ? `${label}\u00a0${unit}` : label}
        </text>
      ))}
    </>
  )
}

function LimitBar({ bar, y }: { bar: Bar; y: number }) {
  const place = { x: bar.left, y, width: Math.max(bar.right - bar.left, 1), height: BAR_HEIGHT }
  return (
    <>
      <rect {...place} className={css.bar} />
      <rect {...place} className={bar.isConfirmed ? 'out' : 'ghost'} />
      <text x={bar.wordsX} y={y + 13.5} className={bar.wordsX > bar.right ? 'soft' : undefined}>
        {bar.words}
      </text>
    </>
  )
}
