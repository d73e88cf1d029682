import type { ValveHistory } from '@glandkeeper/contract/valves'
import { sectionDrawing } from '@glandkeeper/drawings/section'
import { drawnGland, scaleNote } from '@glandkeeper/drawings/section-model'
import { Drawn } from '../../ui/drawn.tsx'
import { useMeasuredWidth } from '../../ui/measured-width.ts'
import look from './section-drawing.module.css'

/** The stuffing box of one valve, upright and in section, drawn from its own dimensions. */
export function SectionDrawing({ history }: { history: ValveHistory }) {
  const [frame, width] = useMeasuredWidth()
  const rings = history.lives.find((life) => life.to === null)?.rings ?? null
  const gland = drawnGland(history.valve.gland, history.state, rings)
  return (
    <figure ref={frame} className={look.figure}>
      {width !== null && width > 0 && <Drawn drawing={sectionDrawing(gland, history.valve.gland.studThread, width)} />}
      <figcaption className={look.note}>{scaleNote(gland)}</figcaption>
    </figure>
  )
}
