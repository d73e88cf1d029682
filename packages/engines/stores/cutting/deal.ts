import { type Cord, type Rules, wasteAt } from './job.ts'
import { sumsOfSets } from './sums.ts'
import { compareScores, costAt, nothing, type Score, sumOf } from './score.ts'

/** A reel with what is cut from it, or the heap of what has found no room: that has no cord. */
export interface Side {
  readonly cord: Cord | null
  /** Cut from it already. */
  readonly taken: number
  readonly room: number
  items: readonly SizedItem[]
  /** The turn in which it was last dealt anew. */
  changedIn: number
}
interface SizedItem {
  readonly item: number
  readonly size: number
}

/** Items that are dealt anew at once: every one of their 256 ways is tried. */
const MOST_DEALT = 8

/** Deals the items of two sides anew, the best of all ways; whether that was any better. Other turns deal other items. */
export function dealAnew(one: Side, other: Side, rules: Rules, turn: number): boolean {
  const [ofOne, ofOther] = divide(one, other, turn)
  const pool = [...ofOne.dealt, ...ofOther.dealt]
  if (pool.length === 0) return false
  const sums = sumsOfSets(pool.map(({ size }) => size))
  const whole = sums.at(-1) ?? 0
  const scoreOfWay = (way: number, than: Score | null) => {
    const sum = sums[way] ?? 0
    return scoreOfDeal(one, ofOne.kept + sum, other, ofOther.kept + whole - sum, rules, than)
  }
  const before = 2 ** ofOne.dealt.length - 1
  let best = before
  let least = scoreOfWay(before, null)
  for (const way of sums.keys()) {
    const found = scoreOfWay(way, least)
    if (found) [best, least] = [way, found]
  }
  if (best === before) return false
  one.changedIn = other.changedIn = turn
  one.items = [...ofOne.stays, ...pool.filter((_, place) => best & (1 << place))]
  other.items = [...ofOther.stays, ...pool.filter((_, place) => !(best & (1 << place)))]
  return true
}

/** Which items of each side are dealt and which stay, and what is taken by those. */
function divide(one: Side, other: Side, turn: number) {
  const half = MOST_DEALT / 2
  const share = Math.max(half, MOST_DEALT - other.items.length)
  const otherShare = MOST_DEALT - Math.min(share, one.items.length)
  return [part(one, share, turn), part(other, otherShare, turn)] as const
}

function part({ items, taken }: Side, share: number, turn: number) {
  const from = items.length > share ? (turn * share) % items.length : 0
  const turned = [...items.slice(from), ...items.slice(0, from)]
  const stays = turned.slice(share)
  return { dealt: turned.slice(0, share), stays, kept: stays.reduce((sum, { size }) => sum + size, taken) }
}

/** The score of a deal that can be made and is better than another; null for any else. */
function scoreOfDeal(one: Side, onOne: number, other: Side, onOther: number, rules: Rules, than: Score | null): Score | null {
  if (onOne > one.room || onOther > other.room) return null
  const left = (one.cord ? 0 : onOne) + (other.cord ? 0 : onOther)
  const waste = (one.cord ? wasteAt(one.cord, onOne, rules) : 0) + (other.cord ? wasteAt(other.cord, onOther, rules) : 0)
  // Most deals end here.
  if (than && (left > than.left || (left === than.left && waste > than.waste))) return null
  const costOf = ({ cord }: Side, taken: number) => (cord ? costAt(cord, taken, rules) : nothing)
  const score = { left, ...sumOf(costOf(one, onOne), costOf(other, onOther)) }
  return !than || compareScores(score, than) < 0 ? score : null
}
