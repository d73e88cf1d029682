import type { ValveCard } from '@glandkeeper/contract/pocket'

const MOST_FOUND = 30
const EACH_WAY = 3

type Placed = Pick<ValveCard, 'valve'>

/** Valves whose tag holds what was typed, those that begin with it first; capitals, spaces and hyphens do not matter. */
export function findByTag<T extends Placed>(cards: readonly T[], typed: string): T[] {
  const wanted = folded(typed)
  if (wanted === '') return []
  const found = cards.filter(({ valve }) => folded(valve.tag).includes(wanted))
  const isLater = ({ valve }: T) => (folded(valve.tag).startsWith(wanted) ? 0 : 1)
  return found
    .toSorted((one, other) => isLater(one) - isLater(other) || one.valve.tag.localeCompare(other.valve.tag))
    .slice(0, MOST_FOUND)
}

/** The valves before and after one in the walk through its area. */
export function nearInTheWalk<T extends Placed>(cards: readonly T[], tag: string): T[] {
  const here = cards.find(({ valve }) => valve.tag === tag)
  if (!here) return []
  const walk = cards
    .filter(({ valve }) => valve.areaCode === here.valve.areaCode)
    .toSorted((one, other) => one.valve.walkPosition - other.valve.walkPosition || one.valve.tag.localeCompare(other.valve.tag))
  const place = walk.indexOf(here)
  return [...walk.slice(Math.max(0, place - EACH_WAY), place), ...walk.slice(place + 1, place + 1 + EACH_WAY)]
}

function folded(text: string): string {
  return text.toLowerCase().replaceAll(/[\s._/+-]+/g, '')
}
