import type { Crew, DueVisit, PlanArea, RoundPlanInput } from './input.ts'

/** Why a visit is in no week. */
export type ImpossibleReason =
  | 'no crew'
  | 'no crew has the skill'
  | 'closed all through its window'
  | 'no crew hours in its window'
  | 'its window is over'
  | 'hours run short'
  | 'pinned week beyond the plan'
  | 'pinned week is full'

export interface Impossible {
  readonly visitId: string
  readonly reason: ImpossibleReason
}

/** Visits of one window: they are alike to the search. */
export interface WindowClass {
  readonly earliest: number
  readonly latest: number
  readonly before: number | null
  hours: number
  readonly visits: DueVisit[]
}

/** An area as one crew walks it: what the plan opens in some weeks. */
export interface Beat {
  readonly area: PlanArea
  readonly crew: Crew
  /** Weeks in which visits may be put. */
  readonly allowed: Uint8Array
  /** Weeks that are open anyway, for visits that do not move. */
  readonly isFixedOpen: Uint8Array
  /** Shortest window first: who has least choice chooses first. */
  readonly classes: readonly WindowClass[]
  readonly fixed: readonly { readonly visit: DueVisit; readonly week: number }[]
  readonly hours: number
}

/** Sorts every visit to the area and crew it belongs to, with its window cut to weeks that can be walked. */
export function beatsOf(
  input: RoundPlanInput,
  crewOfArea: ReadonlyMap<string, Crew>,
): { readonly beats: readonly Beat[]; readonly impossible: readonly Impossible[] } {
  const areas = new Map(input.areas.map((area) => [area.id, area]))
  const crews = new Map(input.crews.map((crew) => [crew.id, crew]))
  const impossible: Impossible[] = []
  const byBeat = new Map<string, { area: PlanArea; crew: Crew; visits: DueVisit[] }>()
  for (const visit of input.visits) {
    const area = areas.get(visit.areaId)
    if (!area) continue
    const crew = crews.get(visit.frozen?.crewId ?? visit.pin?.crewId ?? '') ?? crewOfArea.get(area.id)
    if (!crew) {
      impossible.push({ visitId: visit.id, reason: input.crews.length === 0 ? 'no crew' : 'no crew has the skill' })
      continue
    }
    const key = `${area.id}\n${crew.id}`
    const beat = byBeat.get(key) ?? { area, crew, visits: [] }
    beat.visits.push(visit)
    byBeat.set(key, beat)
  }
  const beats = [...byBeat.values()].map(({ area, crew, visits }) => beatWith(input, area, crew, visits, impossible))
  return { beats, impossible }
}

function beatWith(
  { weeks, rules }: RoundPlanInput,
  area: PlanArea,
  crew: Crew,
  visits: readonly DueVisit[],
  impossible: Impossible[],
): Beat {
  const closed = new Set(area.closedWeeks)
  const allowed = Uint8Array.from({ length: weeks }, (_, week) =>
    week >= rules.frozenWeeks && !closed.has(week) && (crew.hours[week] ?? 0) > 0 ? 1 : 0,
  )
  const isFixedOpen = new Uint8Array(weeks)
  const fixed: { visit: DueVisit; week: number }[] = []
  const classes = new Map<string, WindowClass>()
  for (const visit of visits) {
    const set = visit.frozen?.week ?? visit.pin?.week ?? null
    if (set !== null) {
      if (set < 0 || set >= weeks) impossible.push({ visitId: visit.id, reason: 'pinned week beyond the plan' })
      else {
        fixed.push({ visit, week: set })
        isFixedOpen[set] = 1
      }
      continue
    }
    const [earliest, latest] = trimmed(visit, allowed)
    if (earliest > latest) {
      impossible.push({ visitId: visit.id, reason: whyNowhere(visit, rules.frozenWeeks, weeks, closed) })
      continue
    }
    const before = visit.before !== null && visit.before >= earliest && visit.before <= latest ? visit.before : null
    const key = `${earliest} ${latest} ${before ?? ''}`
    const alike = classes.get(key) ?? { earliest, latest, before, hours: 0, visits: [] }
    alike.hours += visit.hours
    alike.visits.push(visit)
    classes.set(key, alike)
  }
  const sorted = [...classes.values()].toSorted(
    (one, other) => one.latest - one.earliest - (other.latest - other.earliest) || one.earliest - other.earliest,
  )
  const hours = sorted.reduce((sum, { hours: own }) => sum + own, 0)
  return { area, crew, allowed, isFixedOpen, classes: sorted, fixed, hours }
}

/** The window from its first to its last week that can be walked; empty (first after last) where there is none. */
function trimmed({ earliest, latest }: DueVisit, allowed: Uint8Array): [number, number] {
  let first = Math.max(0, earliest)
  let last = Math.min(allowed.length - 1, latest)
  while (first <= last && !allowed[first]) first += 1
  while (last >= first && !allowed[last]) last -= 1
  return [first, last]
}

function whyNowhere(
  { earliest, latest }: DueVisit,
  frozenWeeks: number,
  weeks: number,
  closed: ReadonlySet<number>,
): ImpossibleReason {
  const first = Math.max(frozenWeeks, earliest)
  const last = Math.min(weeks - 1, latest)
  if (first > last) return 'its window is over'
  for (let week = first; week <= last; week += 1) if (!closed.has(week)) return 'no crew hours in its window'
  return 'closed all through its window'
}
