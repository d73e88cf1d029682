import { countsAsLeak } from '@glandkeeper/engines/leak/visits'
import type { Read } from '../../platform/store.ts'
import { netScreening } from '../glands/index.ts'
import { sightingsWith, type StandingSighting } from '../leak-rules/index.ts'

interface Asked {
  readonly valveId: string
  readonly openedAt: Date
  /** The net screening value that is a leak here; null where nobody screens. */
  readonly judgedFrom: number | null
}

const PORTION = 400

/** By valve: the last sighting since its leak opened that saw it leak and gave a figure of it. */
export async function lastFigures(
  read: Read,
  siteId: string,
  asked: readonly Asked[],
): Promise<ReadonlyMap<string, StandingSighting>> {
  const figures = new Map<string, StandingSighting>()
  for (let from = 0; from < asked.length; from += PORTION) {
    const portion = asked.slice(from, from + PORTION)
    const ids = portion.map(({ valveId }) => valveId)
    const sightings = await sightingsWith(read, siteId, ids, ['screeningValue', 'dropsPerMinute', 'opening'])
    for (const one of portion) {
      const last = sightings.get(one.valveId)?.findLast((sighting) => givesFigure(sighting, one))
      if (last) figures.set(one.valveId, last)
    }
  }
  return figures
}

function givesFigure({ said, takenAt }: StandingSighting, { openedAt, judgedFrom }: Asked): boolean {
  const { leak, dropsPerMinute = 0, opening = 0 } = said
  const net = netScreening(said)
  const leaksToMeter = judgedFrom !== null && net !== null && net >= judgedFrom
  const hasFigure = net !== null || dropsPerMinute > 0 || opening > 0
  return takenAt >= openedAt && hasFigure && (countsAsLeak(leak) || leaksToMeter)
}
