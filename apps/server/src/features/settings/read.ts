import { type Setting, settingKeys, settings, type SettingValues } from '@glandkeeper/contract/settings'
import type { Read } from '../../platform/store.ts'

/** Every setting as it holds at the site: what somebody confirmed, and the default of the rest. */
export async function shownSettings(read: Pick<Read, 'site'>, siteId: string): Promise<Setting[]> {
  const { settings: rows } = await read.site.findUniqueOrThrow({
    where: { id: siteId },
    select: { settings: { include: { person: { select: { name: true } } } } },
  })
  const confirmed = new Map(rows.map((row) => [row.key, row]))
  return settingKeys.map((key) => {
    const row = confirmed.get(key)
    return {
      key,
      value: figure(row?.value ?? settings[key].usually),
      confirmed: row ? { by: row.person.name, at: row.confirmedAt.toISOString() } : null,
    }
  })
}

/** The settings other features compute with, each in its own unit. */
export async function siteSettings(read: Pick<Read, 'site'>, siteId: string): Promise<SettingValues> {
  const { settings: rows } = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { settings: true } })
  return settingValuesOf(rows)
}

/** From the rows a site keeps. A kept figure that no longer fits its range gives way to the default. */
export function settingValuesOf(rows: readonly { readonly key: string; readonly value: number }[]): SettingValues {
  const kept = new Map(rows.map(({ key, value }) => [key, value]))
  return Object.fromEntries(
    settingKeys.map((key) => {
      const parsed = settings[key].value.safeParse(kept.get(key))
      return [key, parsed.success ? parsed.data : settings[key].usually]
    }),
  ) as unknown as SettingValues
}

/** Checked when it was written: only the brand is missing. */
export function figure(value: number): Setting['value'] {
  return value as Setting['value']
}
