import type { LeakHistory } from '@glandkeeper/contract/leaks'
import type { SiteFamily } from '@glandkeeper/contract/packings'
import { beforeTheLeak } from '@glandkeeper/engines/leak/before-the-leak'
import type { Leak } from '@glandkeeper/engines/leak/leaks'
import type { GlandHistory } from '@glandkeeper/engines/reserve/gland-history'
import { daysBetween, instant } from '@glandkeeper/units/quantity'
import { subDays } from 'date-fns/subDays'
import type { ValveModel } from '../../generated/sqlite/models.ts'
import { findingsInWords } from '../glands/index.ts'
import type { ToldEntry } from './leak-steps.ts'

type Before = LeakHistory['leaks'][number]['before']

/** Findings older than this say little of a leak. */
const DAYS_OF_FINDINGS = 90

/** What changed before one leak of a valve, with who touched the gland last. */
export function beforeLeak(known: {
  readonly valve: ValveModel
  readonly leaks: readonly Leak[]
  readonly leak: Leak
  readonly history: GlandHistory
  readonly told: ReadonlyMap<string, ToldEntry>
  readonly families: readonly SiteFamily[]
}): Before {
  const { valve, leaks, leak, history, told, families } = known
  const figures = beforeTheLeak({ ...history, leaks, leakId: leak.id })
  // Leaks and moments come from the same facts: one without the other is a fault of the server.
  if (!figures.ok) throw new Error(figures.problem.detail)
  const opened = new Date(leak.openedAt)
  const touched = [...told.values()]
    .filter(({ said, at }) => at < opened && TOUCHES.has(said.kind))
    .toSorted((one, other) => one.at.getTime() - other.at.getTime())
    .at(-1)
  const { nipsCloser, travelPerMonth } = figures
  return {
    daysBetweenNips: [...figures.nipGaps],
    nipsCloser: nipsCloser && { first: nipsCloser.first, last: nipsCloser.last },
    usedLately: travelPerMonth.threeMonthsBefore as Before['usedLately'],
    usedBefore: travelPerMonth.lifeBefore as Before['usedBefore'],
    reserveThen: figures.travelLeft,
    packingAgeDays: figures.packingAge,
    family: figures.family,
    familyBefore: figures.familyBefore,
    earlierLeaks: figures.earlierLeaks,
    lastTouchedBy: touched?.by ?? null,
    lastTouchedCrew: touched?.crew ?? null,
    lastTouchedSays: touched?.says ?? null,
    lastTouchedDays: touched ? daysBetween(instant(touched.at.getTime()), leak.openedAt) : null,
    temperature: valve.temperatureC as Before['temperature'],
    hottestOfFamily: hottestOf(families, figures.family),
    findings: history.moments
      .filter(({ at }) => at <= leak.openedAt && at >= subDays(opened, DAYS_OF_FINDINGS).getTime())
      .flatMap(({ at, findings }) => findingsInWords(findings).map(({ detail }) => ({ at: new Date(at).toISOString(), detail }))),
  }
}

const TOUCHES: ReadonlySet<string> = new Set(['gland.nipped', 'ring.added', 'packing.renewed', 'leak.treated'])

function hottestOf(families: readonly SiteFamily[], name: string | null): Before['hottestOfFamily'] {
  const family = families.find((one) => one.name === name)
  return family?.figures.highestTemperature?.value ?? null
}
