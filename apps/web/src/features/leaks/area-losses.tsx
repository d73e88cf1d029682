import type { showLeakLosses } from '@glandkeeper/contract/leak-losses'
import type { OkOf } from '@glandkeeper/contract/endpoint'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import css from './leaks.module.css'
import { BAR_HEIGHT, type LossBar, lossBars } from './loss-geometry.ts'
import { massInWords, mostFirst } from './loss-words.ts'

type Areas = OkOf<typeof showLeakLosses>['byArea']

const MOST = 1000

/** What each area loses, with its interval. */
export function AreaLosses({ areas }: { areas: Areas }) {
  const [measure, width] = useMeasuredWidth()
  if (areas.length === 0) return null
  return (
    <section className={css.part} aria-labelledby="areas">
      <h2 id="areas">By area</h2>
      <figure ref={measure} className={css.plot}>
        <figcaption className="soft">bar: what is lost; line: its interval, an arrow where that goes on</figcaption>
        {width !== null && width > 0 && <Drawn areas={mostFirst(areas)} width={Math.min(width, MOST)} />}
      </figure>
    </section>
  )
}

function Drawn({ areas, width }: { areas: Areas; width: number }) {
  const { bars, height } = lossBars(areas, width)
  const says = areas.map(({ name, kilogramsPerHour }) => `${name}: ${massInWords(kilogramsPerHour)}`)
  return (
    <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={says.join('; ')}>
      {areas.map(({ areaCode, kilogramsPerHour }, index) => {
        const bar = bars[index]
        return bar && <Bar key={areaCode} bar={bar} words={massInWords(kilogramsPerHour)} />
      })}
    </svg>
  )
}

function Bar({ bar, words }: { bar: LossBar; words: string }) {
  const middle = bar.y + BAR_HEIGHT / 2
  const end = bar.isBeyond ? `M${bar.to - 6} ${middle - 4}l6 4l-6 4` : `M${bar.to} ${middle - 4}v8`
  return (
    <>
      <text x={bar.nameX} y={bar.nameY} className={css.areaName}>
        {bar.name}
      </text>
      <rect x={bar.left} y={bar.y} width={Math.max(bar.width, 1)} height={BAR_HEIGHT} className={css.bar} />
      <path d={`M${bar.from} ${middle}H${bar.to}M${bar.from} ${middle - 4}v8${end}`} className="out" />
      <text x={bar.wordsX} y={bar.y + 14}>
        {words}
      </text>
    </>
  )
}
