import type { ValveInput } from '@glandkeeper/contract/valves'
import { glandProblems } from '@glandkeeper/engines/gland/gland'
import type { Fault } from '@glandkeeper/contract/problem'
import { findThread } from '@glandkeeper/engines/threads/stud-threads'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Write } from '../../platform/store.ts'
import type { ValveModel } from '../../generated/sqlite/models.ts'
import { forecastBasis, glandForEngines, rebuildState, writeEmptyStates } from '../glands/index.ts'
import { presentInput } from './present.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

/** Contradictions in a gland and a thread nobody knows, as faults with the place they belong to. */
export function glandFaults(gland: ValveInput['gland']): Fault[] {
  const says: Record<string, (values: Record<string, unknown>) => string> = {
    'gland/bore-not-larger-than-stem': (v) =>
      `a bore of ${String(v['boxBore'])} mm is not larger than a stem of ${String(v['stemDiameter'])} mm`,
    'gland/nose-shorter-than-engagement': (v) =>
      `a nose of ${String(v['noseLength'])} mm cannot be engaged by ${String(v['leastEngagement'])} mm`,
    'gland/nose-longer-than-box': (v) =>
      `a nose of ${String(v['noseLength'])} mm is as long as the box is deep, ${String(v['boxDepth'])} mm`,
  }
  const faults = glandProblems(glandForEngines(gland)).map((problem) => ({
    pointer: `#/gland/${problem.field}`,
    detail: says[problem.code]?.({ ...problem }) ?? problem.code,
  }))
  if (gland.studThread !== null && !findThread(gland.studThread).ok) {
    faults.push({
      pointer: '#/gland/studThread',
      detail: `${gland.studThread} is not a thread we know; write it as M12, 1/2-13 UNC, 1/2-12 BSW`,
    })
  }
  return faults
}

export function refuseImpossibleGland(input: ValveInput): void {
  const faults = glandFaults(input.gland)
  if (faults.length > 0) throw new Refusal('valve/impossible-gland', faults[0]?.detail, faults)
}

/** Adds a valve to the writer's site. The tag must be free and the area known. */
export async function addValve(write: Write, by: By, input: ValveInput, now: Date): Promise<string> {
  await refuseTakenTag(write, by.siteId, input.tag)
  const areaId = await areaIdOf(write, by.siteId, input.areaCode)
  const id = newId()
  const valve = await write.valve.create({
    data: { id, siteId: by.siteId, ...rowOf(input, areaId), createdAt: now, updatedAt: now },
  })
  await writeEmptyStates(write, by.siteId, [valve], now)
  await noteChange(write, by, { subject: 'valve', subjectId: id, what: 'valve added', before: {}, after: flat(input) }, now)
  return id
}

/** Changes a valve that nobody else has changed since `revision`. The gland's state follows its new dimensions. */
export async function changeValve(
  write: Write,
  by: By,
  tag: string,
  revision: number,
  input: ValveInput,
  now: Date,
): Promise<void> {
  const before = await valveToChange(write, by.siteId, tag, revision)
  if (input.tag !== before.tag) await refuseTakenTag(write, by.siteId, input.tag)
  const areaId = await areaIdOf(write, by.siteId, input.areaCode)
  const area = await write.area.findUniqueOrThrow({ where: { id: before.areaId } })
  await write.valve.update({
    where: { id: before.id },
    data: { ...rowOf(input, areaId), revision: revision + 1, updatedAt: now },
  })
  await rebuildState(write, by.siteId, before.id, await forecastBasis(write, by.siteId, now))
  await noteChange(
    write,
    by,
    {
      subject: 'valve',
      subjectId: before.id,
      what: 'valve changed',
      before: flat(presentInput({ ...before, area })),
      after: flat(input),
    },
    now,
  )
}

export async function retireValve(write: Write, by: By, tag: string, revision: number, reason: string, now: Date): Promise<void> {
  const before = await valveToChange(write, by.siteId, tag, revision)
  await write.valve.update({ where: { id: before.id }, data: { retiredAt: now, revision: revision + 1, updatedAt: now } })
  await write.valveState.update({ where: { valveId: before.id }, data: { retired: true } })
  await noteChange(
    write,
    by,
    { subject: 'valve', subjectId: before.id, what: 'valve retired', before: { retired: 'no' }, after: { retired: reason } },
    now,
  )
}

async function valveToChange(write: Write, siteId: string, tag: string, revision: number): Promise<ValveModel> {
  const valve = await write.valve.findUnique({ where: { siteId_tag: { siteId, tag } } })
  if (!valve) throw new Refusal('valve/unknown', tag)
  if (valve.revision !== revision)
    throw new Refusal('valve/changed-meanwhile', `you changed revision ${revision}, the register has ${valve.revision}`)
  return valve
}

async function refuseTakenTag(write: Write, siteId: string, tag: string): Promise<void> {
  if (await write.valve.findUnique({ where: { siteId_tag: { siteId, tag } }, select: { id: true } }))
    throw new Refusal('valve/tag-taken', tag)
}

async function areaIdOf(write: Write, siteId: string, code: string): Promise<string> {
  const area = await write.area.findUnique({ where: { siteId_code: { siteId, code } }, select: { id: true } })
  if (!area) throw new Refusal('area/unknown', code, [{ pointer: '#/areaCode', detail: `there is no area ${code}` }])
  return area.id
}

/** The columns of a valve. Where types end, units go into the names. */
export function rowOf(input: ValveInput, areaId: string) {
  const { gland, areaCode: _, temperature, pressure, east, north, ...same } = input
  return {
    ...same,
    areaId,
    searchText: searchTextOf(input),
    eastM: east,
    northM: north,
    temperatureC: temperature,
    pressureBar: pressure,
    boxBoreMm: gland.boxBore,
    stemDiameterMm: gland.stemDiameter,
    boxDepthMm: gland.boxDepth,
    followerKind: gland.followerKind,
    noseLengthMm: gland.noseLength,
    leastEngagementMm: gland.leastEngagement,
    keepClearMm: gland.keepClear,
    studThread: gland.studThread,
    studCount: gland.studCount,
    studGrade: gland.studGrade,
    lubrication: gland.lubrication,
  }
}

function searchTextOf({ tag, description, fluid, service }: ValveInput): string {
  return foldedText(`${tag} ${description} ${service} ${fluid}`)
}

/** Small letters without accents, so that a search means the same on both databases. */
export function foldedText(text: string): string {
  return text.normalize('NFKD').replaceAll(/\p{M}/gu, '').toLowerCase()
}

/** One level deep, so that a change can be shown field by field. */
export function flat({ gland, ...rest }: ValveInput): Record<string, unknown> {
  return { ...rest, ...gland }
}
