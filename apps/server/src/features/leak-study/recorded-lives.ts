import type { RecordedLife } from '@glandkeeper/engines/packing/lives/lives'
import { wasAtValve } from '@glandkeeper/engines/reserve/facts'
import type { WatchedGland } from './watched-gland.ts'
import { NOT_KNOWN } from './watched-pieces.ts'

/**
 * The packings a gland has had, each with how it ended. Worn out: renewed with no more travel left than calls for a watch,
 * or while a leak stood open. A top-up ring ends none.
 */
export function recordedLives(gland: WatchedGland, watchReserve: number): RecordedLife[] {
  const { tag, service, temperature, facts, history, leaks } = gland
  const lastSeen = facts.findLast(({ fact }) => wasAtValve(fact.kind))?.takenAt ?? gland.from
  const renewals = facts.flatMap(({ id, fact }, place) => (fact.kind === 'packing.renewed' ? [{ id, place }] : []))
  const whileLeaking = new Set(
    leaks.flatMap(({ attempts }) => attempts.flatMap(({ by, factId }) => (by === 'repack' ? [factId] : []))),
  )
  // The packing of before the records has no renewal that began it.
  const endsOneLater = history.lives[0]?.from === null ? 0 : 1
  return history.lives.map(({ from, to, family }, packing): RecordedLife => {
    const renewal = renewals[packing + endsOneLater]
    const reserve = renewal === undefined ? null : (history.moments[renewal.place - 1]?.reserve ?? null)
    const isWornOut = renewal !== undefined && (whileLeaking.has(renewal.id) || (reserve !== null && reserve <= watchReserve))
    const endedBy = renewal === undefined ? null : isWornOut ? 'worn out' : 'renewed early'
    return { valveId: tag, family: family ?? NOT_KNOWN, service, temperature, from, to, endedBy, lastSeen }
  })
}
