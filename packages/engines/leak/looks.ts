import type { Ppmv } from '@glandkeeper/units/quantity'
import type { Fact, LeakGrade } from '../reserve/facts.ts'

/** What was done against a leak. */
export type Attempt = 'nip' | 'ring' | 'repack' | 'treatment'

export interface Look {
  readonly kind: 'look'
  readonly grade: LeakGrade | null
  readonly netScreening: Ppmv | null
}

/**
 * What a fact tells of leaks, in the order it happened: a look, what was done, and a look after it on the spot.
 *
 * @source SRC-791 when a leak opens and ends (docs/sources.md)
 * @example doingsOf({ kind: 'visit.missed' }) // → []
 */
export function doingsOf(fact: Fact): readonly (Look | { readonly kind: 'attempt'; readonly by: Attempt })[] {
  switch (fact.kind) {
    case 'reading.taken':
      return lookOf(fact.leak)
    case 'leak.seen':
      return lookOf(fact.leak, fact.netScreening)
    case 'gland.nipped':
      return [...lookOf(fact.leakBefore), ...(tightens(fact) ? doing('nip') : []), ...lookOf(fact.leakAfter)]
    case 'leak.treated':
      return [...lookOf(fact.leakBefore), ...doing('treatment'), ...lookOf(fact.leakAfter)]
    case 'ring.added':
      return doing('ring')
    case 'packing.renewed':
      return doing('repack')
    case 'repair.deferred':
    case 'visit.missed':
      return []
  }
}

/**
 * Is this a nip that pressed the packing, both sides together?
 *
 * @source SRC-791 when a leak opens and ends (docs/sources.md)
 * @example tightens({ kind: 'gland.nipped', turnsLeft: turns(0.5), turnsRight: turns(-0.5), stem: null, leakBefore: null, leakAfter: null }) // → false
 */
export function tightens(fact: Fact): boolean {
  return fact.kind === 'gland.nipped' && fact.turnsLeft + fact.turnsRight > 0
}

function lookOf(grade: LeakGrade | null, netScreening: Ppmv | null = null): Look[] {
  return grade === null && netScreening === null ? [] : [{ kind: 'look', grade, netScreening }]
}

function doing(by: Attempt): [{ readonly kind: 'attempt'; readonly by: Attempt }] {
  return [{ kind: 'attempt', by }]
}
