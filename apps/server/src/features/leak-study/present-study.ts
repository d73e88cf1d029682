import type { OkIn } from '@glandkeeper/contract/endpoint'
import type { showLeakStudy, StudyPeriod } from '@glandkeeper/contract/leak-study'
import type { Read } from '../../platform/store.ts'
import { newestStudy } from './kept-study.ts'
import type { PeriodFigures } from './period-sums.ts'

/** The newest study as it counts over one period; null before the first. */
export async function presentStudy(
  read: Pick<Read, 'leakStudy' | 'site'>,
  siteId: string,
  period: StudyPeriod,
): Promise<OkIn<typeof showLeakStudy>['study']> {
  const study = await newestStudy(read, siteId)
  if (study === null) return null
  const { chainLength } = await read.site.findUniqueOrThrow({ where: { id: siteId }, select: { chainLength: true } })
  const { madeAt, entries, body } = study
  return {
    madeAt: madeAt.toISOString(),
    entries,
    entriesSince: Math.max(0, chainLength - entries),
    valves: body.valves,
    period,
    ...body.course,
    ...(JSON.parse(body.periods[period]) as PeriodFigures),
  }
}
