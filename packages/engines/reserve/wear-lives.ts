import { type Instant, type Millimetre, mm } from '@glandkeeper/units/quantity'
import type { Gland } from '../gland/gland.ts'
import { findThread } from '../threads/stud-threads.ts'
import type { LifeRecord, Nip, ReserveReading } from '../wear/life.ts'
import type { GlandHistory, Moment } from './gland-history.ts'

/** A life of the packing as the wear model takes it, with what is needed to group it with others. */
export interface WearLife {
  readonly record: LifeRecord
  /** When it began; null before the records. */
  readonly from: Instant | null
  /** When it ended with a repack or a top-up ring; null while it goes on. */
  readonly to: Instant | null
  readonly family: string | null
}

/** Half a turn of an M12 nut: taken where the stud thread is not known. */
const USUAL_STEP = mm(0.875)

/**
 * Cuts a history into packing lives for the wear model: readings of the reserve that somebody measured, and nips.
 *
 * A top-up ring begins a life of its own, since the follower starts anew and the new ring beds in. A gap worked out
 * from turns is no reading: the turns themselves are given as nips.
 *
 * @returns lives in order, the present one last; none where nothing was ever entered
 * @example wearLives(gland, { moments: [], lives: [] }) // → []
 */
export function wearLives(gland: Gland, history: GlandHistory): WearLife[] {
  const { moments } = history
  if (moments.length === 0) return []
  const begins = moments.flatMap((moment, index) => (isLoaded(moment) ? [index] : []))
  const bounds = begins[0] === 0 ? begins : [0, ...begins]
  const step = stepOf(gland)
  return bounds.map((start, index) => {
    const first = moments[start]
    const next = bounds[index + 1]
    const own = moments.slice(start, next)
    const from = first && isLoaded(first) ? first.at : null
    const to = next === undefined ? null : (moments[next]?.at ?? null)
    return {
      record: { readings: readingsOf(own), nips: nipsOf(own), repackedAt: from, step },
      from,
      to,
      family: familyAt(history, first?.at ?? null),
    }
  })
}

function isLoaded({ kind }: Moment): boolean {
  return kind === 'packing.renewed' || kind === 'ring.added'
}

function readingsOf(moments: readonly Moment[]): ReserveReading[] {
  return moments.flatMap(({ kind, at, reserve, gapIsInferred }) =>
    reserve !== null && !gapIsInferred && (kind === 'reading.taken' || kind === 'packing.renewed' || kind === 'ring.added')
      ? [{ at, reserve }]
      : [],
  )
}

/** How far each nip took the follower, as its turns say: the course of the reserve is worked out from them. */
function nipsOf(moments: readonly Moment[]): Nip[] {
  return moments.flatMap((moment, index) => {
    const before = moments[index - 1]?.reserve ?? null
    if (moment.kind !== 'gland.nipped' || before === null || moment.reserve === null) return []
    return [{ at: moment.at, travel: mm(before - moment.reserve) }]
  })
}

function stepOf({ studThread }: Gland): Millimetre {
  const found = studThread === null ? null : findThread(studThread)
  return found?.ok ? mm(found.thread.pitch / 2) : USUAL_STEP
}

function familyAt({ lives }: GlandHistory, at: Instant | null): string | null {
  return lives.findLast((life) => at !== null && (life.from === null || life.from <= at))?.family ?? null
}
