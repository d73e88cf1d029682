import type { LeakStudy, StudyPeriod } from '@glandkeeper/contract/leak-study'
import type { z } from 'zod'
import { newId } from '../../platform/ids.ts'
import type { Read, Store } from '../../platform/store.ts'

type Study = z.input<typeof LeakStudy>

/** What a study leaves: parts that are asked for one at a time are texts of their own, so that nobody reads the others. */
export interface StudyBody {
  readonly valves: number
  readonly course: Pick<Study, 'meanCourse' | 'repeatLeakers' | 'aboveInAll'>
  /** PeriodFigures, as JSON. */
  readonly periods: Readonly<Record<StudyPeriod, string>>
  readonly services: readonly string[]
  /** ComparedLives by service and heat, as JSON. */
  readonly lives: Readonly<Record<string, string>>
}

export interface MadeStudy {
  readonly madeAt: Date
  /** Length of the chain when the reading began. */
  readonly entries: number
  /** A StudyBody, as JSON. */
  readonly body: string
}

/** The newest study of a site; null before the first. */
export async function newestStudy(
  read: Pick<Read, 'leakStudy'>,
  siteId: string,
): Promise<{ readonly madeAt: Date; readonly entries: number; readonly body: StudyBody } | null> {
  const row = await read.leakStudy.findFirst({
    where: { siteId },
    orderBy: [{ madeAt: 'desc' }, { id: 'desc' }],
    select: { madeAt: true, entries: true, body: true },
  })
  return row && { ...row, body: JSON.parse(row.body) as StudyBody }
}

/** In the place of those before it. */
export async function keepStudy(store: Pick<Store, 'write'>, siteId: string, made: MadeStudy): Promise<void> {
  const id = newId()
  await store.write(async (write) => {
    await write.leakStudy.create({ data: { id, siteId, ...made } })
    await write.leakStudy.deleteMany({ where: { siteId, id: { not: id } } })
  })
}
