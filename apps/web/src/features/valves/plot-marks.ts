import type { LeakGrade, TimelineEntry } from '@glandkeeper/contract/events'
import type { PlotFrame } from './reserve-geometry.ts'
import { standingFacts } from './standing-facts.ts'
import { gradesRising } from '@glandkeeper/engines/reserve/facts'

interface NipTick {
  readonly x: number
  readonly from: number
  readonly to: number
}

export interface LeakMark {
  readonly x: number
  readonly grade: Exclude<LeakGrade, 'dry'>
  /** Height of the drop over its line; a damp gland has an open dot on it instead. */
  readonly height: number
}

const TICK = 16
const BESIDE = 4
const heights: Readonly<Record<LeakGrade, number>> = { dry: 0, damp: 0, weep: 13, drip: 26, run: 39 }
/** One upright tick for each half turn, half as high for a quarter; below the line where the nuts were slackened. */
export function nipTicks(timeline: readonly TimelineEntry[], frame: PlotFrame): NipTick[] {
  return standingFacts(timeline).flatMap((fact) => {
    if (fact.kind !== 'gland.nipped') return []
    const turns = (fact.turnsLeft + fact.turnsRight) / 2
    const quarters = Math.max(Math.round(Math.abs(turns) * 4), turns === 0 ? 0 : 1)
    const up = turns < 0 ? 1 : -1
    return Array.from({ length: Math.ceil(quarters / 2) }, (_, index) => {
      const isWhole = quarters - index * 2 >= 2
      return {
        x: frame.x(fact.takenAt) + index * BESIDE,
        from: frame.nipLine,
        to: frame.nipLine + up * (isWhole ? TICK : TICK / 2),
      }
    })
  })
}

/** Every leak that was seen, whatever the entry was about; a dry gland draws nothing. */
export function leakMarks(timeline: readonly TimelineEntry[], frame: PlotFrame): LeakMark[] {
  return standingFacts(timeline).flatMap((fact) => {
    const grade = worstLeak(fact)
    return grade === 'dry' ? [] : [{ x: frame.x(fact.takenAt), grade, height: heights[grade] }]
  })
}

function worstLeak(fact: ReturnType<typeof standingFacts>[number]): LeakGrade {
  if (fact.kind === 'gland.nipped' || fact.kind === 'leak.treated') return worstOf([fact.leakBefore, fact.leakAfter])
  if (fact.kind === 'leak.seen' || fact.kind === 'reading.taken') return worstOf([fact.leak])
  return 'dry'
}

function worstOf(grades: readonly (LeakGrade | undefined)[]): LeakGrade {
  return gradesRising[Math.max(...grades.map((grade) => gradesRising.indexOf(grade ?? 'dry')))] ?? 'dry'
}
