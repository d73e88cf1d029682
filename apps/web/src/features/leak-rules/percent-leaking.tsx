import { useMeasuredWidth } from '../../ui/measured-width.ts'
import css from './leak-rules.module.css'
import { type Percent, percentFrame } from './percent-geometry.ts'
import { courseSays, excludedSays, limitsSay, percentSays } from './percent-words.ts'
import { percentInWords } from './rule-words.ts'

/** How many of all valves leak, what that is of, and how it went by quarter. */
export function PercentLeaking({ percent }: { percent: Percent }) {
  const [measure, width] = useMeasuredWidth()
  const said = [limitsSay(percent), excludedSays(percent)].filter((sentence) => sentence !== null)
  return (
    <section className={css.part} aria-labelledby="percent">
      <h2 id="percent">Percent leaking</h2>
      <p className={percent.isAbove ? 'hot' : undefined}>{percentSays(percent)}</p>
      {said.length > 0 && <p>{said.join(' ')}</p>}
      <figure ref={measure} className={css.plot}>
        <figcaption className="soft">
          By quarter, in percent · under each: leaking of monitored · dashed: the quarter that runs
          {percent.allowed !== null && ' · line across: what is allowed'}
        </figcaption>
        {width !== null && width > 0 && <Course percent={percent} width={width} />}
      </figure>
    </section>
  )
}

function Course({ percent, width }: { percent: Percent; width: number }) {
  const frame = percentFrame(percent, width)
  const { left, right, base } = frame
  return (
    <svg width={width} height={frame.height} viewBox={`0 0 ${width} ${frame.height}`} role="img" aria-label={courseSays(percent)}>
      {frame.levels.map(({ y, label }) => (
        <g key={label}>
          <path d={`M${left} ${y}H${right}`} className={`hair ${css.dotted}`} />
          <text x={left - 6} y={y + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      {frame.bars.map(({ x, width: wide, top, quarter, year, counts, percent: share, isRunning }) => (
        <g key={x}>
          {top !== null && <rect x={x} y={top} width={wide} height={base - top} className={isRunning ? css.running : css.bar} />}
          {share !== null && top !== null && (
            <text x={x + wide / 2} y={top - 5} textAnchor="middle" className={css.halo}>
              {share}
            </text>
          )}
          <text x={x + wide / 2} y={base + 16} textAnchor="middle">
            {quarter}
          </text>
          <text x={x + wide / 2} y={base + 32} textAnchor="middle" className="soft">
            {counts}
          </text>
          {year !== null && (
            <text x={x} y={base + 49} className="soft">
              {year}
            </text>
          )}
        </g>
      ))}
      <path d={`M${left} ${base}H${right}`} className="thin" />
      {frame.allowed !== null && percent.allowed !== null && (
        <>
          <path d={`M${left} ${frame.allowed}H${right}`} className="hotline" />
          <text x={right + 4} y={frame.allowed + 4} className="hot">
            {percentInWords(percent.allowed)}
          </text>
        </>
      )}
    </svg>
  )
}
