import type { FastifyInstance } from 'fastify'
import { addArea, type Area, type AreaInput, changeArea, listAreas } from '@glandkeeper/contract/areas'
import type { z } from 'zod'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import { type Platform, route } from '../../platform/route.ts'
import type { Read, Write } from '../../platform/store.ts'

type AreaFields = z.output<typeof AreaInput>

export function areaRoutes(app: FastifyInstance, platform: Platform): void {
  const { store, clock } = platform
  route(app, platform, listAreas, async ({ me }) => ({ areas: await areasOf(store.read, me.siteId) }))

  route(app, platform, addArea, async ({ body, me }) => {
    await store.write((write) => createArea(write, me, body, clock()))
    return areaWithCode(store.read, me.siteId, body.code)
  })

  route(app, platform, changeArea, async ({ params, body, me }) => {
    await store.write(async (write) => {
      const before = await areaOf(write, me.siteId, params.code)
      if (body.code !== before.code) await refuseTakenCode(write, me.siteId, body.code)
      await write.area.update({ where: { id: before.id }, data: body })
      const { code, name, walkPosition, level } = before
      await noteChange(
        write,
        me,
        { subject: 'area', subjectId: before.id, what: 'area changed', before: { code, name, walkPosition, level }, after: body },
        clock(),
      )
    })
    return areaWithCode(store.read, me.siteId, body.code)
  })
}

/** The row of an area of the site. @throws area/unknown */
export async function areaOf(read: Pick<Read, 'area'>, siteId: string, code: string) {
  const area = await read.area.findUnique({ where: { siteId_code: { siteId, code } } })
  if (!area) throw new Refusal('area/unknown', code)
  return area
}

/** Adds an area of the writer's site; the code must be free. */
export async function createArea(
  write: Write,
  by: Pick<SignedIn, 'siteId' | 'personId'>,
  fields: AreaFields,
  now: Date,
): Promise<string> {
  await refuseTakenCode(write, by.siteId, fields.code)
  const id = newId()
  await write.area.create({ data: { id, siteId: by.siteId, ...fields } })
  await noteChange(write, by, { subject: 'area', subjectId: id, what: 'area added', before: {}, after: fields }, now)
  return id
}

async function refuseTakenCode(write: Write, siteId: string, code: string): Promise<void> {
  if (await write.area.findUnique({ where: { siteId_code: { siteId, code } } })) throw new Refusal('area/code-taken', code)
}

async function areasOf(read: Read, siteId: string): Promise<Area[]> {
  const areas = await read.area.findMany({
    where: { siteId },
    orderBy: [{ walkPosition: 'asc' }, { code: 'asc' }],
    include: { _count: { select: { valves: { where: { retiredAt: null } } } } },
  })
  return areas.map(({ id, code, name, walkPosition, level, _count }) => ({
    areaId: id,
    code,
    name,
    walkPosition,
    level,
    valveCount: _count.valves,
  }))
}

async function areaWithCode(read: Read, siteId: string, code: string): Promise<Area> {
  const found = (await areasOf(read, siteId)).find((area) => area.code === code)
  if (!found) throw new Refusal('area/unknown', code)
  return found
}
