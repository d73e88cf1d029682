import type { LeakHistory } from '@glandkeeper/contract/leaks'
import type { ValveHistory } from '@glandkeeper/contract/valves'
import { leakCourse, leakTargets } from '@glandkeeper/drawings/leak-course'
import { Link } from 'react-router'
import { Drawn } from '../../ui/drawn.tsx'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import { courseOf } from './course.ts'
import css from './leak-history.module.css'

interface CourseFigureProps {
  valve: ValveHistory
  leaks: LeakHistory['leaks']
  shownId: string
  now: Date
  timeZone: string
}

/** Reserve, nips, leaks and what stood out on one time axis; a leak is pressed to read about it below. */
export function CourseFigure(props: CourseFigureProps) {
  const [frame, width] = useMeasuredWidth()
  return (
    <figure ref={frame} className={css.course}>
      <figcaption className="soft">
        Over each other: travel left in mm, solid where it was read, dashed where worked out · a whole tick: half a turn · drop
        height: weep, drip, run · open ring: damp · square: only a meter · bar: how long it stood · diamond: a finding
      </figcaption>
      <div className={css.drawn}>{width !== null && width > 0 && <Course {...props} width={width} />}</div>
    </figure>
  )
}

/** The targets are for a finger or a mouse: for keys and screen readers the same leaks are headings below. */
function Course({ width, ...input }: CourseFigureProps & { width: number }) {
  const course = courseOf({ ...input, width })
  const targets = leakTargets(course)
  return (
    <>
      <Drawn drawing={leakCourse(course)} />
      {input.leaks.map(({ leakId }, place) => (
        <Link
          key={leakId}
          to={`#${leakId}`}
          preventScrollReset
          tabIndex={-1}
          aria-hidden="true"
          className={css.target}
          style={targets[place]}
        />
      ))}
    </>
  )
}
