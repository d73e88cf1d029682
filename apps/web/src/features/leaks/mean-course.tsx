import type { LeakStudy } from '@glandkeeper/contract/leak-study'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { courseFrame } from './course-geometry.ts'
import css from './leaks.module.css'
import { meanInWords } from './study-words.ts'

const MOST = 860

type Steps = LeakStudy['meanCourse']

/** How many leaks a valve of this plant has had on average, the longer it was watched. */
export function MeanCourse({ steps }: { steps: Steps }) {
  const [measure, width] = useMeasuredWidth()
  if (steps.length === 0) return <p className="soft">No valve was watched long enough for a mean.</p>
  return (
    <figure ref={measure} className={css.plot}>
      <figcaption>
        Mean number of leaks of a valve{' '}
        <span className="soft">by the time since its records began · band: limits that hold 95 times in 100</span>
      </figcaption>
      {width !== null && width > 0 && <Drawn steps={steps} width={Math.min(width, MOST)} />}
    </figure>
  )
}

function Drawn({ steps, width }: { steps: Steps; width: number }) {
  const frame = courseFrame(steps, width)
  const { left, right, top, base } = frame
  return (
    <svg
      width={width}
      height={frame.height}
      viewBox={`0 0 ${width} ${frame.height}`}
      role="img"
      aria-label={courseInWords(steps)}
    >
      <rect x={left} y={top} width={right - left} height={base - top} className="paperfill" />
      <path d={frame.band} className={css.band} />
      {frame.levels.map(({ y, label }) => (
        <g key={label}>
          <path d={`M${left} ${y}H${right}`} className={`hair ${css.dotted}`} />
          <text x={left - 8} y={y + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      <path d={frame.course} className={css.course} />
      {frame.end && (
        <text x={frame.end.x + 6} y={frame.end.y + 5} className={css.strong}>
          {meanInWords(frame.end.mean)}
        </text>
      )}
      <path d={`M${left} ${base}H${right}${frame.times.map(({ x }) => `M${x} ${base}v6`).join('')}`} className="thin" />
      {frame.times.map(({ x, label, watched }) => (
        <g key={label}>
          <text x={x} y={base + 20} textAnchor="middle">
            {label}
          </text>
          <text x={x} y={base + 38} textAnchor="middle" className="soft">
            {watched}
          </text>
        </g>
      ))}
      <text x={right} y={base + 56} textAnchor="end" className="soft">
        second line: valves watched so long
      </text>
    </svg>
  )
}

function courseInWords(steps: Steps): string {
  const last = steps.at(-1)
  if (!last) return 'No course'
  const limits = last.lower === null || last.upper === null ? '' : `, ${meanInWords(last.lower)} to ${meanInWords(last.upper)}`
  return `A valve watched for ${last.days} days has had ${meanInWords(last.mean)} leaks on average${limits}`
}
