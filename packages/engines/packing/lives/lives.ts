import { type Celsius, daysBetween, type Instant } from '@glandkeeper/units/quantity'
import type { Lifetime } from '../../stats/lifetime.ts'

/** One packing in one valve, from the repack that put it in. */
export interface RecordedLife {
  readonly valveId: string
  readonly family: string
  readonly service: string
  readonly temperature: Celsius | null
  /** Null where it was in the box before the records begin. */
  readonly from: Instant | null
  /** The repack that took it out; null while it is in the box. */
  readonly to: Instant | null
  /** Renewed early: taken out although it still held. Null where nobody said, or while it is in the box. */
  readonly endedBy: 'worn out' | 'renewed early' | null
  /** The last time somebody saw the gland. */
  readonly lastSeen: Instant
}

export interface LifeOfPacking extends Lifetime, Pick<RecordedLife, 'valveId' | 'family' | 'service' | 'temperature'> {}

export interface PackingLives {
  /** Times in months of 30.4375 days. */
  readonly lives: readonly LifeOfPacking[]
  /** Taken out, nobody said why: they are among the lives, as if they had still held. */
  readonly reasonNotKnown: number
  readonly leftOut: {
    readonly beginningNotKnown: number
    /** Out or last seen no later than put in: nothing is known of how long it held. */
    readonly withoutLength: number
  }
}

const DAYS_PER_MONTH = 30.4375

/**
 * Packing lives as lifetimes: ended where the packing was worn out, cut short (censored) where it still held when last known of.
 *
 *     worn out: ended at the repack · renewed early: held until the repack · in the box: held when last seen
 *
 * Lengths are counted in whole days, one at least: nobody knows the hour at which a packing gave out. A packing renewed early
 * because it was about to fail is not cut short by chance, and makes its family look longer-lived than it is.
 *
 * @source SRC-767 months, and what counts as ended (docs/sources.md)
 * @example packingLives([{ valveId: 'a', family: 'graphite braid', service: 'steam', temperature: null, from: instant(0), to: instant(30.4375 * 40 * 86_400_000), endedBy: 'worn out', lastSeen: instant(0) }]).lives[0].time // → 1218 / 30.4375
 */
export function packingLives(recorded: readonly RecordedLife[]): PackingLives {
  const lives: LifeOfPacking[] = []
  const leftOut = { beginningNotKnown: 0, withoutLength: 0 }
  let reasonNotKnown = 0
  for (const { valveId, family, service, temperature, from, to, endedBy, lastSeen } of recorded) {
    if (from === null) {
      leftOut.beginningNotKnown++
      continue
    }
    const until = to ?? lastSeen
    if (!(until > from)) {
      leftOut.withoutLength++
      continue
    }
    if (to !== null && endedBy === null) reasonNotKnown++
    const time = Math.max(1, Math.round(daysBetween(from, until))) / DAYS_PER_MONTH
    lives.push({ valveId, family, service, temperature, time, ended: to !== null && endedBy === 'worn out' })
  }
  return { lives, reasonNotKnown, leftOut }
}
