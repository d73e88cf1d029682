import type { LeakStudy } from '@glandkeeper/contract/leak-study'
import type { PackingLife } from '@glandkeeper/engines/reserve/gland-history'
import type { Instant } from '@glandkeeper/units/quantity'
import type { z } from 'zod'
import { rateFigures, type WatchedValves } from './rate-table.ts'
import { nothingWatched, together, type Watched } from './watched-pieces.ts'

type PackingChange = z.input<typeof LeakStudy>['packingChanges'][number]

interface Pair {
  readonly from: string
  readonly to: string
  readonly tags: string[]
  before: WatchedValves
  after: WatchedValves
}

/** One packing after another of the same family, told by their places among the lives of a gland. */
interface Run {
  readonly family: string
  readonly begins: Instant
  readonly packings: readonly number[]
}

const LEAST_VALVES = 2
const MOST_PAIRS = 10
/** More links than anybody follows; the figures count them all. */
const MOST_TAGS = 50

/** Valves that had one packing and then another: what they leaked with each. */
export class PackingChangeSums {
  readonly #since: Instant
  readonly #pairs = new Map<string, Pair>()

  constructor(since: Instant) {
    this.#since = since
  }

  /** @param watchedWith what was watched of the valve, by the place of the packing among its lives */
  add(tag: string, lives: readonly PackingLife[], watchedWith: ReadonlyMap<number, Watched>): void {
    const watched = ({ packings }: Run) =>
      packings.reduce((sum, packing) => together(sum, watchedWith.get(packing) ?? nothingWatched), nothingWatched)
    const runs = runsOf(lives)
    for (const [index, after] of runs.entries()) {
      const before = runs[index - 1]
      // A change of before the time counted over has nothing on its far side.
      if (!before || !(after.begins > this.#since)) continue
      const [then, since] = [watched(before), watched(after)]
      if (then.days > 0 && since.days > 0) this.#note({ from: before.family, to: after.family }, tag, then, since)
    }
  }

  /** The commonest first. */
  figures(): PackingChange[] {
    return [...this.#pairs.values()]
      .filter(({ tags }) => tags.length >= LEAST_VALVES)
      .toSorted((one, other) => other.tags.length - one.tags.length || (keyOf(one) < keyOf(other) ? -1 : 1))
      .slice(0, MOST_PAIRS)
      .map(({ from, to, tags, before, after }) => ({
        from,
        to,
        valves: tags.toSorted().slice(0, MOST_TAGS),
        before: rateFigures(before),
        after: rateFigures(after),
      }))
  }

  #note(named: Pick<Pair, 'from' | 'to'>, tag: string, before: Watched, after: Watched): void {
    const nobody: WatchedValves = { ...nothingWatched, valves: 0 }
    const pair = this.#pairs.get(keyOf(named)) ?? { ...named, tags: [], before: nobody, after: nobody }
    // Changed to and fro it is one valve all the same.
    if (pair.tags.at(-1) !== tag) pair.tags.push(tag)
    pair.before = { ...together(pair.before, before), valves: pair.tags.length }
    pair.after = { ...together(pair.after, after), valves: pair.tags.length }
    this.#pairs.set(keyOf(named), pair)
  }
}

function keyOf({ from, to }: Pick<Pair, 'from' | 'to'>): string {
  return JSON.stringify([from, to])
}

/** A packing that was in the box before the records begin has no name, and none changed from it. */
function runsOf(lives: readonly PackingLife[]): Run[] {
  const runs: { family: string; begins: Instant; packings: number[] }[] = []
  for (const [packing, { from, family }] of lives.entries()) {
    if (from === null || family === null) continue
    const last = runs.at(-1)
    if (last?.family === family) last.packings.push(packing)
    else runs.push({ family, begins: from, packings: [packing] })
  }
  return runs
}
