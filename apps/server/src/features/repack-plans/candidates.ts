import type { TradeHours } from '@glandkeeper/contract/outages'
import type { Standing } from '@glandkeeper/contract/reserve'
import type { SettingValues } from '@glandkeeper/contract/settings'
import { instant } from '@glandkeeper/units/quantity'
import { groupedBy } from '../../platform/grouped-by.ts'
import type { Read } from '../../platform/store.ts'
import { bandsOf, standingOfRow } from '../glands/index.ts'
import { type ValveOutlook, valveOutlook } from './valve-outlook.ts'

/** A valve that a plan has to do with. */
export interface Candidate {
  readonly valveId: string
  readonly tag: string
  readonly areaId: string
  readonly areaCode: string
  readonly boundary: string
  readonly isolatesOnLine: boolean
  readonly needsScaffold: boolean
  readonly criticality: string
  readonly standing: Standing
  readonly outlook: ValveOutlook
}

/** Valves that are isolated, and so repacked, together. */
export interface Boundary {
  /** The name of the boundary; the valve's own id where it has none. */
  readonly id: string
  readonly valves: readonly Candidate[]
  /** All of them do, or the boundary does not. */
  readonly isolatesOnLine: boolean
  /** Isolating and scaffolding are done once, fitting for each valve. */
  readonly hours: TradeHours
}

const PAGE = 2_000
const FOR_PLAN = {
  id: true,
  tag: true,
  areaId: true,
  isolationBoundary: true,
  isolatesOnLine: true,
  access: true,
  criticality: true,
  area: { select: { code: true } },
  state: {
    select: {
      reserveMm: true,
      chanceBeforeStop: true,
      forecast: true,
      nextLook: true,
      lastSeenAt: true,
      packedAt: true,
    },
  },
} as const

export interface CandidateFrame {
  readonly now: Date
  /** The end of the plan. */
  readonly endsAt: Date
  readonly settings: SettingValues
}

/** Those likely enough to run out before the plan ends, and all that stand at book or spent. */
export async function repackCandidates(
  read: Read,
  siteId: string,
  { now, endsAt, settings }: CandidateFrame,
  only: readonly string[] | null = null,
): Promise<Candidate[]> {
  const bands = bandsOf(settings)
  const found: Candidate[] = []
  for (let after = ''; ;) {
    const rows = await read.valve.findMany({
      where: { siteId, retiredAt: null, id: { gt: after, ...(only && { in: [...only] }) } },
      orderBy: { id: 'asc' },
      take: PAGE,
      select: FOR_PLAN,
    })
    for (const { state, area, ...valve } of rows) {
      if (!state) continue
      const standing = standingOfRow(state, bands)
      const outlook = valveOutlook(state, now, settings.leakTarget)
      const isPressing = standing === 'book' || standing === 'spent'
      if (only === null && !isPressing && outlook.chanceBefore(instant(endsAt.getTime())) < settings.planChance) continue
      found.push({
        valveId: valve.id,
        tag: valve.tag,
        areaId: valve.areaId,
        areaCode: area.code,
        boundary: valve.isolationBoundary,
        isolatesOnLine: valve.isolatesOnLine,
        needsScaffold: valve.access === 'scaffold',
        criticality: valve.criticality,
        standing,
        outlook,
      })
    }
    if (rows.length < PAGE) return found.toSorted((one, other) => (one.tag < other.tag ? -1 : 1))
    after = rows.at(-1)?.id ?? after
  }
}

export function boundariesOf(candidates: readonly Candidate[], settings: SettingValues): Boundary[] {
  const groups = groupedBy(candidates, ({ boundary, valveId }) => (boundary === '' ? valveId : boundary))
  return [...groups].map(([id, valves]) => ({
    id,
    valves,
    isolatesOnLine: valves.every(({ isolatesOnLine }) => isolatesOnLine),
    hours: {
      fitting: valves.length * settings.hoursOfRepack,
      scaffolding: valves.some(({ needsScaffold }) => needsScaffold) ? settings.hoursToScaffold : 0,
      isolating: settings.hoursToIsolate,
    } as TradeHours,
  }))
}

/** The part of a boundary's hours that falls to each of its valves: rows add up to what a slot gives. */
export function hoursOfEach({ hours, valves }: Boundary): TradeHours {
  const part = (whole: number) => whole / valves.length
  return { fitting: part(hours.fitting), scaffolding: part(hours.scaffolding), isolating: part(hours.isolating) } as TradeHours
}
