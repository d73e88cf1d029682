import type { Read } from '../../platform/store.ts'
import { type DaySpan, daysOfRule } from './days-of-rule.ts'
import type { HoursOff } from './hours-by-week.ts'

/** Days off within a span: those of the whole site, and those of each crew and area. */
export async function hoursOff(read: Pick<Read, 'daysOff'>, siteId: string, span: DaySpan) {
  const rows = await read.daysOff.findMany({ where: { siteId } })
  const ofSite: HoursOff[] = []
  const ofCrew = new Map<string, HoursOff[]>()
  const ofArea = new Map<string, HoursOff[]>()
  for (const row of rows) {
    const off = { days: daysOfRule(row, span), share: row.share }
    if (row.crewId !== null) ofCrew.set(row.crewId, [...(ofCrew.get(row.crewId) ?? []), off])
    else if (row.areaId !== null) ofArea.set(row.areaId, [...(ofArea.get(row.areaId) ?? []), off])
    else ofSite.push(off)
  }
  return { ofSite, ofCrew, ofArea }
}
