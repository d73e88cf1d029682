import type { CutCard } from '@glandkeeper/contract/cut-cards'
import { Refusal } from '../../platform/problem.ts'
import type { Read } from '../../platform/store.ts'
import { glandCourse } from '../glands/index.ts'
import { siteFamilies } from '../packings/index.ts'
import { siteSettings } from '../settings/index.ts'
import { presentInput } from '../valves/index.ts'
import { cardOf } from './card-of.ts'

/** What the register knows of a valve, of its last repack and of the site's settings, as a card. */
export async function cutCard(read: Read, siteId: string, tag: string, now: Date): Promise<CutCard> {
  const row = await read.valve.findUnique({ where: { siteId_tag: { siteId, tag } }, include: { area: true, site: true } })
  if (!row) throw new Refusal('valve/unknown', tag)
  const [events, rules, families] = await Promise.all([
    read.event.findMany({
      where: { siteId, valveId: row.id },
      select: { id: true, kind: true, body: true, takenAt: true },
    }),
    siteSettings(read, siteId),
    siteFamilies(read, siteId),
  ])
  const life = glandCourse(row, events).history.lives.find(({ to }) => to === null)
  const familyName = life?.family ?? null
  return cardOf({
    valve: { ...presentInput(row), areaName: row.area.name },
    familyName,
    family: families.find(({ name }) => name === familyName) ?? null,
    lastRings: life?.rings ?? null,
    rules,
    now,
    timeZone: row.site.timeZone,
  })
}
