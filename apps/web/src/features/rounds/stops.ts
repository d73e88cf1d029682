import type { Round, RoundStop } from '@glandkeeper/contract/rounds'
import type { OutboxEntry } from '../../platform/outbox/entries.ts'
import { stillHolding } from '../../platform/outbox/still-holding.ts'

/** What is known of a stop on this device: what the server knows, and what it has not been told yet. */
export type StopFate = 'open' | 'visited' | 'missed' | 'on this device'

export function fateOf(stop: Pick<RoundStop, 'valveId' | 'visit'>, waiting: readonly OutboxEntry[]): StopFate {
  const own = waiting.map(({ event }) => event).filter(({ valveId }) => valveId === stop.valveId)
  if (stillHolding(own).length > 0) return 'on this device'
  if (stop.visit === null) return 'open'
  return stop.visit.missed === null ? 'visited' : 'missed'
}

/** The next open stop after a valve, around the end of the round to those that were left out before it; null when none is left. */
export function nextOpenStop(round: Pick<Round, 'stops'>, valveId: string, waiting: readonly OutboxEntry[]): RoundStop | null {
  const here = round.stops.findIndex((stop) => stop.valveId === valveId)
  const inOrder = [...round.stops.slice(here + 1), ...round.stops.slice(0, Math.max(here, 0))]
  return inOrder.find((stop) => fateOf(stop, waiting) === 'open') ?? null
}

/** Stops as they are walked: by area and level. */
export interface Stretch {
  readonly areaCode: string
  readonly areaName: string
  readonly level: number
  readonly stops: readonly RoundStop[]
}

export function stretchesOf(stops: readonly RoundStop[]): Stretch[] {
  const stretches: { areaCode: string; areaName: string; level: number; stops: RoundStop[] }[] = []
  for (const stop of stops) {
    const last = stretches.at(-1)
    if (last?.areaCode === stop.areaCode && last.level === stop.level) last.stops.push(stop)
    else stretches.push({ areaCode: stop.areaCode, areaName: stop.areaName, level: stop.level, stops: [stop] })
  }
  return stretches
}
