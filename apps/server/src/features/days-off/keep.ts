import type { DaysOff, DaysOffInput } from '@glandkeeper/contract/crews'
import type { z } from 'zod'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Read, Write } from '../../platform/store.ts'
import { daysAfter } from '../../platform/local-time.ts'
import { areaOf } from '../areas/index.ts'
import { crewOf } from '../crews/index.ts'
import { daysOfRule } from './days-of-rule.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

const TWO_YEARS = 731

/** Days off of the site, its crews and its areas, by their first day. */
export async function daysOffOf(read: Pick<Read, 'daysOff'>, siteId: string): Promise<DaysOff[]> {
  const rows = await read.daysOff.findMany({
    where: { siteId },
    orderBy: [{ startsOn: 'asc' }, { id: 'asc' }],
    include: { area: { select: { code: true } } },
  })
  return rows.map(({ id, crewId, area, reason, startsOn, endsOn, repeats, share }) => ({
    daysOffId: id,
    crewId,
    areaCode: area?.code ?? null,
    reason,
    startsOn,
    endsOn,
    repeats,
    share: share as DaysOff['share'],
  }))
}

export async function createDaysOff(
  write: Write,
  by: By,
  { crewId, areaCode, ...days }: z.output<typeof DaysOffInput>,
  now: Date,
): Promise<string> {
  const { siteId } = by
  // Followed once: a rule that can be read may still never come, or come without end.
  daysOfRule(days, { from: days.startsOn, to: daysAfter(days.startsOn, TWO_YEARS) })
  const crew = crewId === null ? null : await crewOf(write, siteId, crewId)
  const area = areaCode === null ? null : await areaOf(write, siteId, areaCode)
  const id = newId()
  await write.daysOff.create({ data: { id, siteId, crewId, areaId: area?.id ?? null, ...days } })
  await noteChange(
    write,
    by,
    {
      subject: 'days off',
      subjectId: id,
      what: 'days off added',
      before: {},
      after: { crew: crew?.name ?? null, areaCode, ...days },
    },
    now,
  )
  return id
}

export async function removeDaysOffOf(write: Write, by: By, daysOffId: string, now: Date): Promise<void> {
  const before = await write.daysOff.findFirst({ where: { id: daysOffId, siteId: by.siteId } })
  if (!before) throw new Refusal('daysoff/unknown', daysOffId)
  await write.daysOff.delete({ where: { id: daysOffId } })
  const { reason, startsOn, endsOn } = before
  await noteChange(
    write,
    by,
    { subject: 'days off', subjectId: daysOffId, what: 'days off removed', before: { reason, startsOn, endsOn }, after: {} },
    now,
  )
}
