import type { Read } from '../../platform/store.ts'
import { daysAfter } from '../../platform/local-time.ts'
import { closedWeeks, hoursByWeek, hoursOff } from '../days-off/index.ts'

/** Crews with their hours in each week, less the days off of the site and their own. */
export async function crewHoursByWeek(read: Read, siteId: string, mondays: readonly string[]) {
  const rows = await read.crew.findMany({ where: { siteId, retiredAt: null }, orderBy: [{ name: 'asc' }, { id: 'asc' }] })
  const off = await hoursOff(read, siteId, spanOf(mondays))
  return rows.map(({ id, name, skills, hoursPerWeek }) => ({
    id,
    name,
    skills,
    hours: hoursByWeek(hoursPerWeek, mondays, [...off.ofSite, ...(off.ofCrew.get(id) ?? [])]),
  }))
}

/** Weeks in which an area is closed all through, by area. Days on which the whole site is off close no area: they take the crews' hours. */
export async function closedWeeksOf(read: Read, siteId: string, mondays: readonly string[]): Promise<Map<string, number[]>> {
  const { ofArea } = await hoursOff(read, siteId, spanOf(mondays))
  return new Map([...ofArea].map(([areaId, off]) => [areaId, closedWeeks(mondays, off)]))
}

function spanOf(mondays: readonly string[]) {
  return { from: mondays[0] ?? '', to: daysAfter(mondays.at(-1) ?? '', 6) }
}
