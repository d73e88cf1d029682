import type { Read } from '../../platform/store.ts'

/** The newest plan of repacks that was taken; null before the first. */
export function repackPlanInUse(read: Pick<Read, 'repackPlan'>, siteId: string) {
  return read.repackPlan.findFirst({
    where: { siteId, takenAt: { not: null }, summary: { not: '' } },
    orderBy: [{ takenAt: 'desc' }, { id: 'desc' }],
  })
}
