import type { Calibration } from '@glandkeeper/contract/calibration'
import { scaleLinear } from '@visx/scale'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { percent, shareInWords } from './calibration-words.ts'
import css from './forecasts.module.css'

const MOST = 460
const LEFT = 44
const RIGHT = 12
const TOP = 12
const FOOT = 44
const TICKS = [0, 0.2, 0.4, 0.6, 0.8, 1]

/** Chance forecast against the share that came true, with limits: on the diagonal forecasts are right. */
export function CalibrationPlot({ curve }: { curve: Calibration['curve'] }) {
  const [measure, width] = useMeasuredWidth()
  return (
    <figure ref={measure} className={css.plot}>
      {width !== null && width > 0 && <Plot curve={curve} width={Math.min(width, MOST)} />}
      <figcaption className="soft">
        Upright lines: limits that hold 95 times in 100. Below the dashed line dates came later than forecast, above it sooner.
      </figcaption>
    </figure>
  )
}

function Plot({ curve, width }: { curve: Calibration['curve']; width: number }) {
  const side = width - LEFT - RIGHT
  const height = side + TOP + FOOT
  const x = scaleLinear<number>({ domain: [0, 1], range: [LEFT, width - RIGHT] })
  const y = scaleLinear<number>({ domain: [0, 1], range: [TOP + side, TOP] })
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={curveInWords(curve)}>
      <path d={TICKS.map((at) => `M${x(0)} ${y(at)}H${x(1)}M${x(at)} ${y(0)}V${y(1)}`).join('')} className={`hair ${css.grid}`} />
      <path d={`M${x(0)} ${y(1)}V${y(0)}H${x(1)}`} className="thin" />
      <path d={`M${x(0)} ${y(0)}L${x(1)} ${y(1)}`} className="ghost" />
      <text x={x(0.62)} y={y(0.62)} dx={10} dy={16} className="soft">
        as forecast
      </text>
      {TICKS.map((at) => (
        <g key={at}>
          <text x={x(at)} y={y(0) + 16} textAnchor="middle">
            {Math.round(at * 100)}
          </text>
          <text x={LEFT - 6} y={y(at) + 4} textAnchor="end">
            {Math.round(at * 100)}
          </text>
        </g>
      ))}
      <text x={x(1)} y={y(0) + 36} textAnchor="end">
        chance forecast, %
      </text>
      <text transform={`translate(11 ${y(1)}) rotate(-90)`} textAnchor="end">
        share whose date had come, %
      </text>
      {curve.map(({ chance, share, lower, upper }) => (
        <g key={chance}>
          <path d={`M${x(chance)} ${y(lower)}V${y(upper)}`} className="thin" />
          <circle cx={x(chance)} cy={y(share)} r={3.5} className={css.point} />
        </g>
      ))}
      <path
        d={curve.map(({ chance, share }, index) => `${index === 0 ? 'M' : 'L'}${x(chance)} ${y(share)}`).join('')}
        className="out"
      />
    </svg>
  )
}

function curveInWords(curve: Calibration['curve']): string {
  const shown = curve.filter(({ chance }) => [0.1, 0.5, 0.9].includes(chance))
  return `Chance forecast and share that came true: ${shown.map((point) => `${percent(point.chance)}: ${shareInWords(point)}`).join('; ')}`
}
