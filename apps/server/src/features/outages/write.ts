import type { OutageInput } from '@glandkeeper/contract/outages'
import type { z } from 'zod'
import type { OutageModel } from '../../generated/sqlite/models.ts'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Read, Write } from '../../platform/store.ts'
import { areaOf } from '../areas/index.ts'
import { hoursColumns } from '../repack-plans/index.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>
type Fields = z.output<typeof OutageInput>

export async function addOutageOf(write: Write, by: By, fields: Fields, now: Date): Promise<string> {
  const id = newId()
  const columns = await columnsOf(write, by.siteId, fields)
  await write.outage.create({ data: { id, siteId: by.siteId, ...columns, state: 'planned', createdAt: now } })
  await note(write, by, { id, what: 'outage added', before: {}, after: fields }, now)
  return id
}

export async function changeOutageOf(
  write: Write,
  by: By,
  { outageId, revision, fields }: { readonly outageId: string; readonly revision: number; readonly fields: Fields },
  now: Date,
): Promise<void> {
  const before = await plannedOutage(write, by.siteId, outageId, revision)
  const columns = await columnsOf(write, by.siteId, fields)
  await write.outage.update({ where: { id: outageId }, data: { ...columns, revision: { increment: 1 } } })
  await note(write, by, { id: outageId, what: 'outage changed', before: daysOf(before), after: fields }, now)
}

/** Puts down when it really was. */
export async function endOutageOf(
  write: Write,
  by: By,
  { outageId, revision, ...days }: { outageId: string; revision: number; startedOn: string; endedOn: string },
  now: Date,
): Promise<void> {
  const before = await plannedOutage(write, by.siteId, outageId, revision)
  await write.outage.update({ where: { id: outageId }, data: { ...days, state: 'over', revision: { increment: 1 } } })
  await note(write, by, { id: outageId, what: 'outage over', before: daysOf(before), after: days }, now)
}

export async function callOffOutageOf(
  write: Write,
  by: By,
  { outageId, revision }: { outageId: string; revision: number },
  now: Date,
): Promise<void> {
  const before = await plannedOutage(write, by.siteId, outageId, revision)
  await write.outage.update({ where: { id: outageId }, data: { state: 'called off', revision: { increment: 1 } } })
  await note(write, by, { id: outageId, what: 'outage called off', before: daysOf(before), after: {} }, now)
}

/** The row of an outage of the site. @throws outage/unknown */
export async function outageOf(read: Pick<Read, 'outage'>, siteId: string, outageId: string): Promise<OutageModel> {
  const outage = await read.outage.findFirst({ where: { id: outageId, siteId } })
  if (!outage) throw new Refusal('outage/unknown', outageId)
  return outage
}

async function plannedOutage(write: Write, siteId: string, outageId: string, revision: number): Promise<OutageModel> {
  const outage = await outageOf(write, siteId, outageId)
  if (outage.state !== 'planned') throw new Refusal('outage/not-planned', outage.name)
  if (outage.revision !== revision) throw new Refusal('outage/changed-meanwhile', outage.name)
  return outage
}

async function columnsOf(write: Write, siteId: string, { hours, areaCodes, ...rest }: Fields) {
  for (const code of areaCodes) await areaOf(write, siteId, code)
  return { ...rest, ...hoursColumns(hours), areaCodes: JSON.stringify([...new Set(areaCodes)].toSorted()) }
}

function daysOf({ name, earliestOn, likelyOn, latestOn, days, state }: OutageModel) {
  return { name, earliestOn, likelyOn, latestOn, days, state }
}

type Note = { readonly id: string; readonly what: string; readonly before: object; readonly after: object }

function note(write: Write, by: By, { id, what, before, after }: Note, now: Date): Promise<void> {
  return noteChange(write, by, { subject: 'outage', subjectId: id, what, before: { ...before }, after: { ...after } }, now)
}
