import { fanOf, forecastInWords, leftOutMarks, stopMark } from './forecast-fan.ts'
import { bandsOf, type PlotFrame, type PlotInput, TOP } from './reserve-geometry.ts'
import look from './reserve-plot.module.css'

interface LayerProps {
  input: PlotInput
  frame: PlotFrame
}

/** Lettering over lines breaks them, in the colour of the ground of the life that lasts. */
export function haloOf(input: PlotInput, frame: PlotFrame): string {
  const isOnBand = bandsOf(input, frame).at(-1)?.isOdd === true
  return [look.halo, isOnBand && look.onBand].filter(Boolean).join(' ')
}

export function Fan({ input, frame }: LayerProps) {
  const fan = fanOf(input, frame)
  if (!fan) return null
  return (
    <>
      <path d={fan.widest} className={look.widest} />
      <path d={fan.likely} className={look.likely} />
      <path d={fan.middle} className={`hotline ${look.forecast}`} />
    </>
  )
}

/** What the fan says stands under the axis, where neither stair nor fan is. */
export function FanWords({ input, frame }: LayerProps) {
  const { forecast, standing } = input.state
  if (forecast === null || standing === 'spent') return null
  return (
    <text x={frame.right} y={frame.y(0) + 20} textAnchor="end" className={`hot ${haloOf(input, frame)}`}>
      {forecastInWords(forecast, input.now, input.timeZone)}
    </text>
  )
}

export function Stop({ input, frame }: LayerProps) {
  const stop = stopMark(input, frame)
  if (!stop) return null
  return (
    <>
      <rect x={stop.left} y={TOP} width={stop.width} height={frame.bottom - TOP} className={look.stop} />
      <text x={stop.labelX} y={TOP - 7} textAnchor={stop.anchor}>
        {stop.label}
      </text>
    </>
  )
}

/** Open, since the forecast does not count them; the word beside them says why. */
export function LeftOut({ input, frame }: LayerProps) {
  const halo = haloOf(input, frame)
  return leftOutMarks(input, frame).map(({ x, y, why, label }) => (
    <g key={`${x} ${y}`}>
      <circle cx={x} cy={y} r="4.5" className={look.leftOut}>
        <title>left out: {why}</title>
      </circle>
      {label && (
        <text x={label.x} y={y - 7} textAnchor={label.anchor} className={`soft ${halo}`}>
          {why}
        </text>
      )}
    </g>
  ))
}
