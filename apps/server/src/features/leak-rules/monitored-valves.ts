import type { MonitoringKind } from '@glandkeeper/contract/leak-rules'
import type { LeakRuleSet } from '@glandkeeper/engines/leak/rules/rule'
import { dayAt, startOfDayAt } from '../../platform/clock.ts'
import type { Read } from '../../platform/store.ts'
import { type MeterLook, meterLooks } from './meter-looks.ts'
import { firstDayOf, QUARTERS, quartersUpTo } from './quarters.ts'
import { mostCleanLooks } from './rule-of-row.ts'

/** A valve under a rule, with the looks that count for it. */
export interface MonitoredValve {
  readonly valveId: string
  readonly tag: string
  readonly description: string
  readonly areaCode: string
  readonly level: number
  readonly kind: MonitoringKind
  readonly note: string
  readonly since: string
  readonly isRetired: boolean
  /** With a meter, from the day it came under the rule, in order of time: those of the last two years, or as many as the rule asks for. */
  readonly looks: readonly MeterLook[]
}

/** All valves under a rule in walking order. */
export async function monitoredValves(
  read: Read,
  siteId: string,
  { ruleId, rule }: { readonly ruleId: string; readonly rule: LeakRuleSet },
  { timeZone, now }: { readonly timeZone: string; readonly now: Date },
): Promise<MonitoredValve[]> {
  const [rows, areas] = await Promise.all([rowsOf(read, siteId, ruleId), areasOf(read, siteId)])
  const today = dayAt(now, timeZone)
  const looks = await looksOf(read, siteId, { rows, rule }, { timeZone, today })
  const placed = rows.map(({ valve, valveId, kind, note, since }) => ({
    area: areas.get(valve.areaId),
    walkPosition: valve.walkPosition,
    valve: {
      valveId,
      tag: valve.tag,
      description: valve.description,
      areaCode: areas.get(valve.areaId)?.code ?? '',
      level: valve.level,
      kind: kind as MonitoringKind,
      note,
      since,
      isRetired: valve.retiredAt !== null,
      looks: countingLooks(looks.get(valveId) ?? [], since, today),
    },
  }))
  return placed
    .toSorted(
      (one, other) =>
        (one.area?.walkPosition ?? 0) - (other.area?.walkPosition ?? 0) ||
        compared(one.valve.areaCode, other.valve.areaCode) ||
        one.walkPosition - other.walkPosition ||
        compared(one.valve.tag, other.valve.tag),
    )
    .map(({ valve }) => valve)
}

/** A plant looks with its meters for decades: what is older than the quarters shown is read only where a rule hangs on it. */
async function looksOf(
  read: Read,
  siteId: string,
  { rows, rule }: { readonly rows: readonly { readonly valveId: string; readonly since: string }[]; readonly rule: LeakRuleSet },
  { timeZone, today }: { readonly timeZone: string; readonly today: string },
): Promise<ReadonlyMap<string, readonly MeterLook[]>> {
  const firstDay = firstDayOf(quartersUpTo(today, QUARTERS)[0] ?? '')
  const valveIds = rows.map(({ valveId }) => valveId)
  const recent = await meterLooks(read, siteId, { valveIds, from: startOfDayAt(firstDay, timeZone) }, timeZone)
  const tellsAll = (looks: readonly MeterLook[]) =>
    looks.length >= mostCleanLooks(rule) || looks.some(({ net }) => net >= rule.leakFrom)
  const untold = rows.filter(({ valveId, since }) => since < firstDay && !tellsAll(recent.get(valveId) ?? []))
  const older = await meterLooks(read, siteId, { valveIds: untold.map(({ valveId }) => valveId), from: null }, timeZone)
  return new Map([...recent, ...older])
}

/** The clock of a device may be ahead by some hours: nobody has looked tomorrow. */
function countingLooks(looks: readonly MeterLook[], since: string, today: string): MeterLook[] {
  return looks.filter(({ day }) => day >= since).map((look) => (look.day > today ? { ...look, day: today } : look))
}

function rowsOf(read: Read, siteId: string, ruleId: string) {
  return read.valveMonitoring.findMany({
    where: { siteId, ruleId },
    select: {
      valveId: true,
      kind: true,
      note: true,
      since: true,
      valve: {
        select: { tag: true, description: true, level: true, walkPosition: true, retiredAt: true, areaId: true },
      },
    },
  })
}

async function areasOf(read: Read, siteId: string) {
  const areas = await read.area.findMany({ where: { siteId }, select: { id: true, code: true, walkPosition: true } })
  return new Map(areas.map((area) => [area.id, area]))
}

function compared(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0
}
