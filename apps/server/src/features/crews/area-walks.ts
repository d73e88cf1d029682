import { type AreaWalk, type changeAreaWalk, WalkPlan } from '@glandkeeper/contract/crews'
import type { BodyOf } from '@glandkeeper/contract/endpoint'
import type { SignedIn } from '../../platform/auth.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Read, Write } from '../../platform/store.ts'
import { areaOf } from '../areas/index.ts'
import { crewOf } from './keep.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

/** How each area is walked, in walking order. */
export async function areaWalksOf(read: Pick<Read, 'area'>, siteId: string): Promise<AreaWalk[]> {
  const rows = await read.area.findMany({ where: { siteId }, orderBy: [{ walkPosition: 'asc' }, { code: 'asc' }] })
  return rows.map(({ code, name, setUpMinutes, skill, crewId, walkPlan }) => ({
    areaCode: code,
    areaName: name,
    setUpMinutes: setUpMinutes as AreaWalk['setUpMinutes'],
    skill,
    crewId,
    walkPlan: walkPlanOf(walkPlan),
  }))
}

/** Null where nobody has measured it. */
export function walkPlanOf(kept: string | null): WalkPlan | null {
  return kept === null ? null : WalkPlan.parse(JSON.parse(kept))
}

export async function changeWalkOf(
  write: Write,
  by: By,
  code: string,
  { setUpMinutes, skill, crewId, walkPlan }: BodyOf<typeof changeAreaWalk>,
  now: Date,
): Promise<void> {
  const before = await areaOf(write, by.siteId, code)
  const crew = crewId === null ? null : await crewOf(write, by.siteId, crewId)
  // It may have been retired since.
  const crewBefore = before.crewId === null ? null : await write.crew.findUnique({ where: { id: before.crewId } })
  const kept = walkPlan === null ? null : JSON.stringify(walkPlan)
  await write.area.update({ where: { id: before.id }, data: { setUpMinutes, skill, crewId, walkPlan: kept } })
  await noteChange(
    write,
    by,
    {
      subject: 'area',
      subjectId: before.id,
      what: 'walk of the area changed',
      before: {
        setUpMinutes: before.setUpMinutes,
        skill: before.skill,
        crew: crewBefore?.name ?? null,
        walkPlan: before.walkPlan,
      },
      after: { setUpMinutes, skill, crew: crew?.name ?? null, walkPlan: kept },
    },
    now,
  )
}
