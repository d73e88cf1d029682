import type { ClockBar, ClockFrame } from './clock-geometry.ts'
import { CLOCK_WIDTH } from './clock-geometry.ts'

const HEIGHT = 30
const LINE = 15

/** Solid: the time that ran. Dashed: the time that is left. Thick: the time over. The words beside it say the same. */
export function ClockDrawing({ bar, frame }: { bar: ClockBar; frame: ClockFrame }) {
  const along = ([from, to]: readonly [number, number]) => `M${px(from)} ${LINE}H${px(to)}`
  const upright = (x: number, half: number) => `M${px(x)} ${LINE - half}v${half * 2}`
  return (
    <svg width={CLOCK_WIDTH} height={HEIGHT} viewBox={`0 0 ${CLOCK_WIDTH} ${HEIGHT}`} aria-hidden="true">
      <path d={`M${px(frame.today)} 0v${HEIGHT}`} className="hair" />
      <path d={along(bar.ran)} className="out" />
      {bar.left && <path d={along(bar.left)} className="out dashed" />}
      {bar.over && <path d={`M${px(bar.over[0])} ${LINE - 3}H${px(bar.over[1])}v6H${px(bar.over[0])}Z`} className="hotfill" />}
      <path d={upright(bar.attemptBy, 5)} className="thin" />
      <path d={upright(bar.repairBy, 10)} className="out" />
      {bar.until !== null && <path d={upright(bar.until, 10)} className="out dashed" />}
      {bar.attemptOn !== null && <circle cx={px(bar.attemptOn)} cy={LINE} r="4.2" className="plain out" />}
      {bar.isBrokenLeft && <path d={`M5 ${LINE - 6}l-3 4l3 4l-3 4`} className="thin" />}
      {bar.isBrokenRight && <path d={`M${CLOCK_WIDTH - 2} ${LINE - 6}l-3 4l3 4l-3 4`} className="thin" />}
    </svg>
  )
}

/** The axis of days over the bars. */
export function ClockAxis({ frame }: { frame: ClockFrame }) {
  const room = 30
  return (
    <svg width={CLOCK_WIDTH} height="34" viewBox={`0 0 ${CLOCK_WIDTH} 34`} aria-hidden="true">
      {frame.times.map(({ x, label }) => (
        <g key={label}>
          <path d={`M${px(x)} 34v-5`} className="thin" />
          {Math.abs(x - frame.today) > room && (
            <text x={Math.min(Math.max(x, 18), CLOCK_WIDTH - 18)} y="25" textAnchor="middle" className="soft">
              {label}
            </text>
          )}
        </g>
      ))}
      <path d={`M${px(frame.today)} 34v-16`} className="thin" />
      <text x={Math.min(Math.max(frame.today, 18), CLOCK_WIDTH - 18)} y="13" textAnchor="middle">
        today
      </text>
    </svg>
  )
}

const px = (value: number) => Math.round(value * 10) / 10
