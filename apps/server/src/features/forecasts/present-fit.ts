import type { showFit } from '@glandkeeper/contract/forecasts'
import type { OkIn } from '@glandkeeper/contract/endpoint'
import { mm, ratio } from '@glandkeeper/units/quantity'
import type { Read } from '../../platform/store.ts'
import type { FitBody } from '../glands/index.ts'

type Shown = OkIn<typeof showFit>

const DAYS_IN_YEAR = 365.25

/** The newest fit in figures a person can judge: what it rests on, and how fast each group wears and leaks. */
export async function presentFit(read: Read, siteId: string, running: number | null): Promise<Shown> {
  const row = await read.wearFit.findFirst({ where: { siteId }, orderBy: [{ fittedAt: 'desc' }, { id: 'desc' }] })
  const shown = { running }
  if (!row) return { ...shown, fit: null }
  const { wear, leaks } = JSON.parse(row.body) as FitBody
  const names = [...new Set([...Object.keys(wear?.groups ?? {}), ...Object.keys(leaks.groups)])].toSorted()
  return {
    ...shown,
    fit: {
      fittedAt: row.fittedAt.toISOString(),
      cause: row.cause,
      lives: wear?.quality.lives ?? 0,
      readings: wear?.quality.readings ?? 0,
      readingsLeftOut: wear?.quality.readingsLeftOut ?? 0,
      hasConverged: wear?.quality.hasConverged ?? false,
      lastReadingsWithin80: wear?.quality.lastReadingsWithin80 ?? null,
      readingDeviation: wear === null ? null : mm(Math.sqrt(wear.plant.wear.readingVariance)),
      bedInFall: wear?.plant.wear.bedInFall ?? null,
      bedInTime: wear?.plant.wear.bedInTime ?? null,
      groups: names.map((name) => {
        const prior = wear?.groups[name]
        const leak = leaks.groups[name]
        return {
          name,
          lives: prior?.lives ?? 0,
          ratePerYear: prior ? mm(Math.exp(prior.rate.logRate) * DAYS_IN_YEAR) : null,
          spread: prior ? ratio(Math.exp(Math.sqrt(prior.rate.logRateVariance))) : null,
          valves: leak?.valves ?? 0,
          leaks: leak?.leaks ?? 0,
        }
      }),
    },
  }
}
