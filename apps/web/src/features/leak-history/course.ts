import type { LeakGrade } from '@glandkeeper/contract/events'
import type { LeakHistory } from '@glandkeeper/contract/leaks'
import type { ValveHistory } from '@glandkeeper/contract/valves'
import type { LeakCourse } from '@glandkeeper/drawings/leak-course'
import { standingFacts } from '../valves/index.ts'
import { timeTicks } from './time-ticks.ts'
import { gradesRising } from '@glandkeeper/engines/reserve/facts'

interface CourseInput {
  readonly valve: Pick<ValveHistory, 'points' | 'lives' | 'timeline'>
  readonly leaks: LeakHistory['leaks']
  /** The leak that is looked at. */
  readonly shownId: string
  readonly now: Date
  readonly timeZone: string
  /** In px, as the drawing gets it. */
  readonly width: number
}

type Fact = ReturnType<typeof standingFacts>[number]
type Sighting = LeakCourse['sightings'][number]

const DAY = 86_400_000
const LEAST_DAYS = 120
const PX_PER_TICK = 64
const BESIDE_AXIS = 78

/** Everything of one valve as the drawing takes it, from the first it is known of until now. */
export function courseOf({ valve, leaks, shownId, now, timeZone, width }: CourseInput): LeakCourse {
  const facts = standingFacts(valve.timeline)
  const known = [
    ...valve.points.map(({ at }) => at),
    ...valve.lives.flatMap(({ from }) => from ?? []),
    ...facts.map(({ takenAt }) => takenAt),
  ]
  const from = new Date(Math.min(...known.map((at) => Date.parse(at)), now.getTime() - LEAST_DAYS * DAY))
  const shown = leaks.findIndex(({ leakId }) => leakId === shownId)
  return {
    from: from.toISOString(),
    to: now.toISOString(),
    times: timeTicks(from, now, Math.max(Math.floor((width - BESIDE_AXIS) / PX_PER_TICK), 1), timeZone),
    lives: valve.lives.map((life) => ({ from: life.from, family: life.family })),
    points: valve.points,
    nips: facts.flatMap((fact) =>
      fact.kind === 'gland.nipped' ? [{ at: fact.takenAt, turns: (fact.turnsLeft + fact.turnsRight) / 2 }] : [],
    ),
    sightings: sightingsOf(facts, leaks),
    open: leaks.map(({ openedAt, verifiedAt }) => ({ from: openedAt, to: verifiedAt })),
    findings: valve.timeline
      .filter(({ findings, standsAs }) => findings.length > 0 && standsAs !== 'taken back')
      .map(({ event }) => ({ at: event.takenAt })),
    ...(shown >= 0 && { shown }),
    width,
  }
}

/** One mark for each look, by the worst of it. What no eye saw and a meter did counts as a leak, without a word. */
function sightingsOf(facts: readonly Fact[], leaks: LeakHistory['leaks']): Sighting[] {
  const seenAt = new Set(
    leaks.flatMap(({ steps }) =>
      steps.filter(({ what }) => what === 'seen' || what === 'came back').map(({ at }) => Date.parse(at)),
    ),
  )
  return facts.flatMap((fact) => {
    const grade = worstOf(fact)
    if (grade === null) return []
    const isMetered = fact.kind === 'leak.seen' && grade === 'dry' && seenAt.has(Date.parse(fact.takenAt))
    return [{ at: fact.takenAt, grade: isMetered ? null : grade }]
  })
}

/** Null where nobody looked. */
function worstOf(fact: Fact): LeakGrade | null {
  const said = gradesOf(fact).flatMap((grade) => grade ?? [])
  return said.toSorted((one, other) => gradesRising.indexOf(other) - gradesRising.indexOf(one))[0] ?? null
}

function gradesOf(fact: Fact): readonly (LeakGrade | undefined)[] {
  if (fact.kind === 'gland.nipped' || fact.kind === 'leak.treated') return [fact.leakBefore, fact.leakAfter]
  return fact.kind === 'leak.seen' || fact.kind === 'reading.taken' ? [fact.leak] : []
}
