import type { SiteFamily } from '@glandkeeper/contract/packings'
import type { SettingValues } from '@glandkeeper/contract/settings'
import type { ValveModel } from '../../generated/sqlite/models.ts'
import type { Read } from '../../platform/store.ts'
import { cuttingOf } from '../cut-cards/index.ts'
import { glandOfRow } from '../glands/index.ts'
import { siteFamilies } from '../packings/index.ts'
import { siteSettings } from '../settings/index.ts'
import { type OpenNeed, type PackingNeed, packingNeedOf } from './packing-need.ts'

/** As many as one query may name. */
const VALVES_AT_ONCE = 500

/**
 * What a repack of each valve takes from the store, or why nobody can say. By the packing that is in it now, and by the
 * same arithmetic as its cut card, but without reading an event: thousands of valves in one go.
 */
export async function packingNeeds(
  read: Pick<Read, 'site' | 'valve'>,
  siteId: string,
  valveIds: readonly string[],
): Promise<Map<string, PackingNeed | OpenNeed>> {
  const [rules, families] = await Promise.all([siteSettings(read, siteId), siteFamilies(read, siteId)])
  const byName = new Map(families.map((family) => [family.name, family]))
  const needs = new Map<string, PackingNeed | OpenNeed>()
  for (let at = 0; at < valveIds.length; at += VALVES_AT_ONCE) {
    const valves = await read.valve.findMany({
      where: { siteId, id: { in: valveIds.slice(at, at + VALVES_AT_ONCE) } },
      include: { state: { select: { packingFamily: true } } },
    })
    for (const valve of valves) needs.set(valve.id, needOf(valve, valve.state?.packingFamily ?? null, byName, rules))
  }
  return needs
}

function needOf(valve: ValveModel, familyName: string | null, families: ReadonlyMap<string, SiteFamily>, rules: SettingValues) {
  const family = familyName === null ? null : (families.get(familyName) ?? null)
  const gland = glandOfRow(valve)
  const cutting = cuttingOf({ gland, family, lastRings: null, rules }, () => {})
  return packingNeedOf(familyName, { ...cutting, gland, form: family?.form ?? null }, rules)
}
