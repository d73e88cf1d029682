import { type SeededChance, seededChance } from '../seeded-chance.ts'
import type { Beat } from './beats.ts'
import type { CrewSearch } from './search.ts'

/** Changes between two looks at the heat and at whether to stop. */
const CHANGES_AT_ONCE = 200
/** Rise in cost that is taken at first, in set-ups: less the more beats share the changes, or there is no time to cool. */
const FIRST_HEAT = 50
const MOST_HEAT = 7
const FINENESS = 1_000_000
/** Kinds of change, in a hundred; the rest opens one week more. */
const MOVES = 60
const DROPS = 20
const SLIDES = 10
const FARTHEST_MOVE = 4
const LONGEST_SLIDE = 20

/** Changes beats by chance and takes what costs more too, ever less of it, so that the plan leaves its hollow for a deeper one. */
export function anneal(
  search: CrewSearch,
  beats: readonly Beat[],
  seed: number,
  mostWork: number,
  isOver: () => boolean,
  onProgress: (share: number) => void,
): void {
  if (beats.length === 0) return
  const chance = seededChance(seed)
  const began = search.work
  const setUp = beats.reduce((sum, { area }) => sum + area.setUpHours, 0) / beats.length
  const firstHeat = setUp * Math.min(MOST_HEAT, FIRST_HEAT / beats.length)
  let rounds = 0
  for (let share = 0; share < 1 && !isOver(); share = (search.work - began) / mostWork) {
    const heat = firstHeat * (1 - share) ** 2
    for (let count = 0; count < CHANGES_AT_ONCE; count += 1) {
      const index = chance.below(beats.length)
      const open = (search.open[index] as Uint8Array).slice()
      // A change that cannot be counts as work too, or a plan without a free week would go on for ever.
      if (changed(beats[index] as Beat, open, chance)) search.change(index, open, (heat * chance.below(FINENESS)) / FINENESS)
      else search.work += 1
    }
    rounds += 1
    if (rounds % 50 === 0) onProgress(share)
  }
}

/** Changes open weeks by chance; says whether there was anything to change. The search refuses what misses a window. */
function changed(beat: Beat, open: Uint8Array, chance: SeededChance): boolean {
  const { allowed, isFixedOpen } = beat
  const weeks = open.length
  const kind = chance.below(100)
  const week = chance.below(weeks)
  if (kind < SLIDES) return slid(beat, open, week, Math.min(weeks, week + 2 + chance.below(LONGEST_SLIDE)), chance.below(2) === 0)
  if (kind >= SLIDES + MOVES + DROPS) {
    if (open[week] || !allowed[week]) return false
    open[week] = 1
    return true
  }
  const from = nextOpen(open, week)
  if (from < 0 || isFixedOpen[from]) return false
  open[from] = 0
  if (kind >= SLIDES + MOVES) return true
  const far = 1 + chance.below(FARTHEST_MOVE)
  return opened(beat, open, chance.below(2) === 0 ? from + far : from - far)
}

/** All open weeks of a stretch one week later or earlier: windows in a row often move together or not at all. */
function slid(beat: Beat, open: Uint8Array, first: number, until: number, isLater: boolean): boolean {
  let hasMoved = false
  for (let count = 0; count < until - first; count += 1) {
    const week = isLater ? until - 1 - count : first + count
    if (!open[week] || beat.isFixedOpen[week] || !opened(beat, open, isLater ? week + 1 : week - 1)) continue
    open[week] = 0
    hasMoved = true
  }
  return hasMoved
}

function opened({ allowed }: Beat, open: Uint8Array, week: number): boolean {
  if (!allowed[week] || open[week]) return false
  open[week] = 1
  return true
}

/** The first open week from here, round the end of the year; -1 where none is open. */
function nextOpen(open: Uint8Array, from: number): number {
  const after = open.indexOf(1, from)
  return after >= 0 ? after : open.indexOf(1)
}
