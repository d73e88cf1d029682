import { Link } from 'react-router'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { useSiteToday } from '../people/index.tsx'
import { type LeakView, withLeaks } from './leak-address.ts'
import { isMonthRunning, monthSays } from './leak-words.ts'
import css from './leaks.module.css'
import { type MonthBar, type MonthCount, monthFrame } from './month-geometry.ts'

interface MonthBarsProps {
  months: readonly MonthCount[]
  view: LeakView
}

/** Leaks by the month they were first seen in; a bar is pressed for the leaks of its month. */
export function MonthBars({ months, view }: MonthBarsProps) {
  const [measure, width] = useMeasuredWidth()
  return (
    <figure ref={measure} className={css.plot}>
      <figcaption className="soft">
        Leaks by the month they were first seen in · line across a bar: the same month a year before · dashed: the month that runs
        · press a bar for its leaks
      </figcaption>
      {width !== null && width > 0 && <Drawn months={months} view={view} width={width} />}
    </figure>
  )
}

function Drawn({ months, view, width }: MonthBarsProps & { width: number }) {
  const frame = monthFrame(months, width)
  return (
    <svg width={width} height={frame.height} viewBox={`0 0 ${width} ${frame.height}`} role="group" aria-label="Leaks by month">
      {frame.strips.map(({ base, levels }) => (
        <g key={base}>
          {levels.map(({ y, label }) => (
            <g key={label}>
              <path d={`M${frame.left} ${y}H${frame.right}`} className={`hair ${css.dotted}`} />
              <text x={frame.left - 8} y={y + 4} textAnchor="end">
                {label}
              </text>
            </g>
          ))}
        </g>
      ))}
      {frame.bars.map((bar) => (
        <Bar key={bar.month} bar={bar} view={view} />
      ))}
      {frame.strips.map(({ base }) => (
        <path key={base} d={`M${frame.left} ${base}H${frame.right}`} className="thin" />
      ))}
    </svg>
  )
}

const HEAD = 20
const UNDER = 22

/** The whole column is pressed, so that a month without leaks can be too. */
function Bar({ bar, view }: { bar: MonthBar; view: LeakView }) {
  const today = useSiteToday()
  const isChosen = view.filters.month === bar.month
  const says = monthSays(bar.month, bar.leaks, bar.before?.leaks ?? null)
  const [x, width] = [bar.left + bar.width * 0.16, bar.width * 0.68]
  const middle = bar.left + bar.width / 2
  const shape = isMonthRunning(bar.month, today) ? css.running : css.bar
  return (
    <Link
      to={withLeaks(view, { month: isChosen ? null : bar.month })}
      preventScrollReset
      aria-label={isChosen ? `${says}. Shown below; press for all months` : says}
      aria-current={isChosen ? 'true' : undefined}
      className={css.month}
    >
      <title>{says}</title>
      <rect
        x={bar.left}
        y={bar.stripTop - HEAD}
        width={bar.width}
        height={bar.base - bar.stripTop + HEAD + UNDER}
        className={css.target}
      />
      {bar.leaks > 0 && (
        <rect x={x} y={bar.top} width={width} height={bar.base - bar.top} className={isChosen ? css.chosen : shape} />
      )}
      {bar.yearBefore !== null && <path d={`M${bar.left + 1} ${bar.yearBefore}h${bar.width - 2}`} className={css.before} />}
      {bar.leaks > 0 && (
        <text x={middle} y={bar.figureY} textAnchor="middle" className={css.halo}>
          {bar.leaks}
        </text>
      )}
      <text x={middle} y={bar.base + 16} textAnchor="middle" className={isChosen ? css.strong : undefined}>
        {bar.label}
      </text>
      {bar.year !== null && (
        <text x={bar.left + 2} y={bar.base + 33} className="soft">
          {bar.year}
        </text>
      )}
    </Link>
  )
}
