import type { LeakGrade } from '@glandkeeper/contract/events'
import css from './leaks.module.css'

const WIDTH = 14
const HEIGHT = 32
/** As on the plot of a valve, half as high: the higher the drop, the worse the leak. */
const stems: Readonly<Record<LeakGrade, number>> = { dry: 0, damp: 0, weep: 5, drip: 11, run: 17 }

/** A drop on a stem beside its word; damp is an open dot. */
export function GradeMark({ grade, words = grade }: { grade: LeakGrade; words?: string }) {
  return (
    <span className={css.grade}>
      <svg width={WIDTH} height={HEIGHT} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        {grade === 'damp' && <circle cx={WIDTH / 2} cy={HEIGHT - 5} r="3.4" className="hotline" />}
        {grade !== 'damp' && grade !== 'dry' && (
          <>
            <path d={`M7 ${HEIGHT - 1}v${-stems[grade]}`} className="hotline" />
            <path d={`M7 ${HEIGHT - stems[grade] - 13}c-6 8 -4 12 0 12s6 -4 0 -12Z`} className="hotfill" />
          </>
        )}
      </svg>
      {words}
    </span>
  )
}
