import type { Read } from '../../platform/store.ts'
import { daysOfRule, type HoursOff } from '../days-off/index.ts'

/** Days on which the whole site does not work; those of crews and areas say nothing of repacks. */
export async function daysOffOfSite(
  read: Pick<Read, 'daysOff'>,
  siteId: string,
  span: { readonly from: string; readonly to: string },
): Promise<HoursOff[]> {
  const rows = await read.daysOff.findMany({ where: { siteId, crewId: null, areaId: null } })
  return rows.map((row) => ({ days: daysOfRule(row, span), share: row.share }))
}
