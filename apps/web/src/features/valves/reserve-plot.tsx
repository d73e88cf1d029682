import type { Person } from '@glandkeeper/contract/people'
import type { ValveHistory } from '@glandkeeper/contract/valves'
import { formatMillimetres } from '@glandkeeper/units/format'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { forecastInWords } from './forecast-fan.ts'
import { Fan, FanWords, haloOf, LeftOut, Stop } from './forecast-layer.tsx'
import { ForecastSays } from './forecast-says.tsx'
import { type LeakMark, leakMarks, nipTicks } from './plot-marks.ts'
import { bandsOf, plotFrame, type PlotFrame, type PlotInput, stairOf, TOP } from './reserve-geometry.ts'
import look from './reserve-plot.module.css'

const DOT = 3.4

interface ReservePlotProps {
  history: ValveHistory
  now: Date
  site: Person['site']
}

/** Reserve, nips and leaks over one time axis, with the packing lives behind them. */
export function ReservePlot({ history, now, site }: ReservePlotProps) {
  const [frame, width] = useMeasuredWidth()
  return (
    <figure ref={frame} className={look.figure}>
      <figcaption>
        <span className={look.title}>Reserve, mm of travel still usable</span>
        <span className="soft">solid: measured · dashed: worked out, or expected · bands: 80 and 95 % of likely courses</span>
      </figcaption>
      {width !== null && width > 0 && (
        <Plot history={history} input={{ ...history, now, timeZone: site.timeZone, plannedStopOn: site.nextStopOn, width }} />
      )}
      <p className="soft">one tick: half a turn · drop height: weep, drip, run · open dot: damp</p>
      {history.state.forecast !== null && <ForecastSays forecast={history.state.forecast} />}
    </figure>
  )
}

function Plot({ history, input }: { history: ValveHistory; input: PlotInput }) {
  const frame = plotFrame(input)
  const nips = nipTicks(history.timeline, frame)
  const leaks = leakMarks(history.timeline, frame)
  return (
    <svg
      width={input.width}
      height={frame.height}
      viewBox={`0 0 ${input.width} ${frame.height}`}
      role="img"
      aria-label={plotInWords(history, { ...input, halfTurns: nips.length, leaks: leaks.length })}
    >
      <Bands input={input} frame={frame} />
      <Axes frame={frame} />
      <Fan input={input} frame={frame} />
      <Stop input={input} frame={frame} />
      <path d={`M${frame.today} ${TOP}V${frame.bottom}`} className="thin" />
      <LifeWords input={input} frame={frame} />
      {stairOf(history.points, frame).map(({ path, isInferred }) => (
        <path key={path} d={path} className={isInferred ? `${look.course} ${look.inferred}` : look.course} />
      ))}
      <LeftOut input={input} frame={frame} />
      <FanWords input={input} frame={frame} />
      <TodayFigure input={input} frame={frame} />
      <path d={nips.map(({ x, from, to }) => `M${x.toFixed(1)} ${from}V${to}`).join('')} className="out" />
      <Leaks leaks={leaks} line={frame.leakLine} />
    </svg>
  )
}

function Bands({ input, frame }: { input: PlotInput; frame: PlotFrame }) {
  return (
    <>
      <rect x={frame.left} y={TOP} width={frame.right - frame.left} height={frame.bottom - TOP} className="paperfill" />
      {bandsOf(input, frame).map(
        ({ left, right, isOdd }) =>
          isOdd && (
            <rect
              key={left}
              x={left}
              y={TOP}
              width={Math.max(right - left, 0)}
              height={frame.bottom - TOP}
              className={look.band}
            />
          ),
      )}
    </>
  )
}

function LifeWords({ input, frame }: { input: PlotInput; frame: PlotFrame }) {
  return bandsOf(input, frame).flatMap(({ left, isOdd, lines }) =>
    lines.map((line, index) => (
      <text
        key={`${left} ${line}`}
        x={left + 6}
        y={TOP + 18 + index * 16}
        className={[look.halo, isOdd && look.onBand, index === 0 ? look.life : 'soft'].filter(Boolean).join(' ')}
      >
        {line}
      </text>
    )),
  )
}

function Axes({ frame }: { frame: PlotFrame }) {
  const across = (y: number) => `M${frame.left} ${y}H${frame.right}`
  return (
    <>
      {frame.levels.map(({ mm, y }) => (
        <g key={mm}>
          <path d={across(y)} className={mm === 0 ? 'hair' : `hair ${look.dotted}`} />
          <text x={frame.left - 8} y={y + 5} textAnchor="end">
            {mm}
          </text>
        </g>
      ))}
      <path d={across(frame.nipLine) + across(frame.leakLine)} className="hair" />
      <text x={frame.left - 6} y={frame.nipLine - 3} textAnchor="end">
        nips
      </text>
      <text x={frame.left - 6} y={frame.leakLine - 3} textAnchor="end">
        leaks
      </text>
      <path d={across(frame.bottom) + frame.times.map(({ x }) => `M${x} ${frame.bottom}v6`).join('')} className="thin" />
      {frame.times.map(({ x, label }) => (
        <text key={x} x={x} y={frame.bottom + 22} textAnchor="middle">
          {label}
        </text>
      ))}
    </>
  )
}

function TodayFigure({ input, frame }: { input: PlotInput; frame: PlotFrame }) {
  const { reserve } = input.state
  const halo = haloOf(input, frame)
  if (reserve === null) {
    return (
      <text x={frame.today - 6} y={frame.y(0) - 10} textAnchor="end" className="soft">
        today: not known
      </text>
    )
  }
  // The level the fan starts from may stand over the last reading.
  const y = frame.y(Math.max(reserve, input.state.forecast?.level ?? reserve)) - 8
  return (
    <>
      <text x={frame.today + 6} y={y - 21} className={`soft ${halo}`}>
        today
      </text>
      <text x={frame.today + 6} y={y} className={`${look.today} ${halo}`}>
        {reserve.toFixed(1).replace('-', '−')}
      </text>
    </>
  )
}

/** A drop on a stem, the higher the worse; damp is an open dot on the line. */
function Leaks({ leaks, line }: { leaks: readonly LeakMark[]; line: number }) {
  const drops = leaks.filter(({ grade }) => grade !== 'damp')
  const dots = leaks.filter(({ grade }) => grade === 'damp')
  const dot = DOT * 2
  return (
    <>
      <path d={drops.map(({ x, height }) => `M${x.toFixed(1)} ${line}v${-height}`).join('')} className="hotline" />
      <path
        d={drops.map(({ x, height }) => `M${x.toFixed(1)} ${line - height - 9}c-6 9 -4 13 0 13s6 -4 0 -13Z`).join('')}
        className={look.drop}
      />
      <path
        d={dots
          .map(({ x }) => `M${(x - DOT).toFixed(1)} ${line - 5}a${DOT} ${DOT} 0 1 0 ${dot} 0a${DOT} ${DOT} 0 1 0 ${-dot} 0`)
          .join('')}
        className="hotline"
      />
    </>
  )
}

interface Counted extends Pick<PlotInput, 'now' | 'timeZone'> {
  readonly halfTurns: number
  readonly leaks: number
}

function plotInWords({ state, points, lives }: ValveHistory, { now, timeZone, halfTurns, leaks }: Counted): string {
  const left = state.reserve === null ? 'Reserve not known' : `Reserve ${formatMillimetres(state.reserve)} today`
  const ahead = state.forecast === null ? 'nothing to forecast from' : forecastInWords(state.forecast, now, timeZone)
  return `${left}, ${ahead}. ${points.length} points, ${lives.length} packing lives, ${halfTurns} ticks for nips, ${leaks} leaks seen.`
}
