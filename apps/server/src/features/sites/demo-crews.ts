import { WalkPlan } from '@glandkeeper/contract/crews'
import { plantAreas } from '@glandkeeper/fixtures/demo-plant/areas'
import { plantCrews, plantSkills, walkPlanOf } from '@glandkeeper/fixtures/demo-plant/crews'
import type { SignedIn } from '../../platform/auth.ts'
import { daysAfter, mondayOf } from '../../platform/local-time.ts'
import type { Write } from '../../platform/store.ts'
import { changeWalkOf, createCrew } from '../crews/index.ts'
import { createDaysOff } from '../days-off/index.ts'

/** Crews of the demo plant, how its areas are walked, and a few days off ahead, so that it can be planned at once. */
export async function putDemoCrews(
  write: Write,
  by: Pick<SignedIn, 'siteId' | 'personId'>,
  fitterId: string,
  { today, now }: { readonly today: string; readonly now: Date },
): Promise<void> {
  const crewOfArea = new Map<string, string>()
  for (const [index, { areaCodes, ...crew }] of plantCrews.entries()) {
    const hoursPerWeek = crew.hoursPerWeek as Parameters<typeof createCrew>[2]['hoursPerWeek']
    const personIds = index === 0 ? [fitterId] : []
    const crewId = await createCrew(write, by, { ...crew, hoursPerWeek, skills: [...crew.skills], personIds }, now)
    for (const code of areaCodes) crewOfArea.set(code, crewId)
  }
  for (const { code } of plantAreas) {
    const walkPlan = WalkPlan.parse(walkPlanOf(code))
    const crewId = crewOfArea.get(code) ?? null
    await changeWalkOf(write, by, code, { setUpMinutes: null, skill: plantSkills[code] ?? null, crewId, walkPlan }, now)
  }
  const monday = mondayOf(today)
  const whole = 1 as Parameters<typeof createDaysOff>[2]['share']
  const half = 0.5 as typeof whole
  const off = (reason: string, week: number, days: number) => ({
    reason,
    startsOn: daysAfter(monday, week * 7),
    endsOn: daysAfter(monday, week * 7 + days - 1),
    repeats: null,
  })
  await createDaysOff(write, by, { crewId: null, areaCode: null, ...off('works holiday', 10, 5), share: whole }, now)
  await createDaysOff(
    write,
    by,
    { crewId: crewOfArea.get('SP') ?? null, areaCode: null, ...off('course', 4, 10), share: half },
    now,
  )
  await createDaysOff(write, by, { crewId: null, areaCode: 'BL', ...off('tower lining', 6, 14), share: whole }, now)
}
