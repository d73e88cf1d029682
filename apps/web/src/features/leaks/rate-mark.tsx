import css from './leaks.module.css'
import { rateMark, rateScale } from './rate-scale.ts'

const WIDTH = 200
const HEIGHT = 18

interface RateMarkProps {
  rate: { readonly rate: number | null; readonly lower: number | null; readonly upper: number | null }
  top: number
  /** Of all valves together: a thin upright. */
  overall?: number | null
}

/** A dot with its limits on a scale from zero; an arrow where it goes on beyond. The figures stand beside it. */
export function RateMark({ rate, top, overall = null }: RateMarkProps) {
  const mark = rateMark(rate, top, WIDTH)
  const x = rateScale(top, WIDTH)
  const middle = HEIGHT / 2
  return (
    <svg width={WIDTH} height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
      <path d={`M${x(0)} ${middle}H${x(top)}M${x(0)} ${middle - 4}v8`} className="hair" />
      {overall !== null && <path d={`M${x(overall)} 0V${HEIGHT}`} className={css.overall} />}
      {mark && (
        <>
          <path
            d={`M${mark.from} ${middle}H${mark.to}M${mark.from} ${middle - 4}v8${mark.isBeyond ? `M${mark.to - 6} ${middle - 4}l6 4l-6 4` : `M${mark.to} ${middle - 4}v8`}`}
            className="out"
          />
          <circle cx={mark.dot} cy={middle} r="4" className={css.dot} />
        </>
      )}
    </svg>
  )
}
