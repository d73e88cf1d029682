import type { CutCard } from '@glandkeeper/contract/cut-cards'
import type { SiteFamily } from '@glandkeeper/contract/packings'
import type { SettingValues } from '@glandkeeper/contract/settings'
import type { AreaModel, ValveModel } from '../../generated/sqlite/models.ts'
import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'
import { glandCourse } from '../glands/index.ts'
import { siteFamilies } from '../packings/index.ts'
import { settingValuesOf } from '../settings/index.ts'
import { presentInput } from '../valves/index.ts'
import { cardOf } from './card-of.ts'

/** What all cards of a site stand on: read once for however many. */
export interface CardBasis {
  readonly rules: SettingValues
  readonly families: readonly SiteFamily[]
  readonly timeZone: string
  readonly now: Date
}

export async function cardBasis(read: Read, siteId: string, now: Date): Promise<CardBasis> {
  const [site, families] = await Promise.all([
    read.site.findUniqueOrThrow({ where: { id: siteId }, select: { timeZone: true, settings: true } }),
    siteFamilies(read, siteId),
  ])
  return { rules: settingValuesOf(site.settings), families, timeZone: site.timeZone, now }
}

/** What the register knows of a valve, of its last repack and of the site's settings, as a card. */
export async function cutCard(read: Read, siteId: string, tag: string, now: Date): Promise<CutCard> {
  const row = await read.valve.findUnique({ where: { siteId_tag: { siteId, tag } }, include: { area: true } })
  if (!row) throw new Refusal('valve/unknown', tag)
  return cardOfRow(read, row, await cardBasis(read, siteId, now))
}

type ValveRow = ValveModel & { readonly area: AreaModel }

export async function cardOfRow(read: Read, row: ValveRow, { families, ...basis }: CardBasis): Promise<CutCard> {
  const events = await read.event.findMany({
    where: { siteId: row.siteId, valveId: row.id },
    select: { id: true, kind: true, body: true, takenAt: true },
  })
  const life = glandCourse(row, events).history.lives.find(({ to }) => to === null)
  const familyName = life?.family ?? null
  return cardOf({
    valve: { ...presentInput(row), areaName: row.area.name },
    familyName,
    family: families.find(({ name }) => name === familyName) ?? null,
    lastRings: life?.rings ?? null,
    ...basis,
  })
}
