import type { Millimetre } from '@glandkeeper/units/quantity'
import { firstNotCount, firstNotLength, firstNotLengthOrNought } from '../../gland/dimensions.ts'
import { type Outcome, refuse } from '../../outcome.ts'
import { calendarDayOf } from '../calendar-day.ts'

/** A reel, or what is left of one, of the packing that is to be cut. */
export interface Reel {
  readonly id: string
  readonly batch: string
  readonly length: Millimetre
  /** A day as `2026-03-01`; null for what does not expire. */
  readonly expiresOn: string | null
}

/** Like pieces of one set. */
export interface Piece {
  readonly id: string
  /** Pieces of one set are cut from one reel if that can be: the rings of a valve. */
  readonly setId: string
  readonly length: Millimetre
  readonly count: number
}

export interface CutInput {
  readonly reels: readonly Reel[]
  readonly pieces: readonly Piece[]
  /** Lost in each cut, or trimmed off; 0 for a knife. */
  readonly sawCut: Millimetre
  /** An end at least this long goes back to the store as a part reel, a shorter one is scrap. */
  readonly keepLength: Millimetre
}

const MOST_REELS = 1_000
const MOST_PIECES = 10_000

/** The first fault of an input, by name; null when there is none. */
export function faultOfCutInput({ reels, pieces, sawCut, keepLength }: CutInput): (Outcome<object> & { ok: false }) | null {
  const rules = firstNotLengthOrNought({ sawCut, keepLength })
  if (rules) return rules
  if (reels.length > MOST_REELS)
    return refuse('cutting/too-many', 'reels', `one job takes ${MOST_REELS} reels at most, not ${reels.length}`)
  for (const { id, length, expiresOn } of reels) {
    const fault = firstNotLength({ length })
    if (fault) return refuse(fault.problem.code, 'reels', `reel ${id}: ${fault.problem.detail}`)
    if (expiresOn !== null && calendarDayOf(expiresOn) === null)
      return refuse('day/not-a-day', 'reels', `reel ${id} expires on a day like 2026-03-01, not ${expiresOn}`)
  }
  for (const { id, length, count } of pieces) {
    const fault = firstNotLength({ length }) ?? firstNotCount({ count })
    if (fault) return refuse(fault.problem.code, 'pieces', `piece ${id}: ${fault.problem.detail}`)
  }
  const all = pieces.reduce((sum, { count }) => sum + count, 0)
  if (all > MOST_PIECES) return refuse('cutting/too-many', 'pieces', `one job cuts ${MOST_PIECES} pieces at most, not ${all}`)
  return twice('reels', reels) ?? twice('pieces', pieces)
}

function twice(field: string, named: readonly { readonly id: string }[]): (Outcome<object> & { ok: false }) | null {
  const seen = new Set<string>()
  for (const { id } of named) {
    if (seen.has(id)) return refuse('cutting/twice', field, `${id} is given twice`)
    seen.add(id)
  }
  return null
}
