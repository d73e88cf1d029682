import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { everybody, registerKeepers } from './roles.ts'
import { count } from './quantity.ts'
import { text } from './text.ts'

export const AreaCode = z
  .string()
  .trim()
  .regex(/^[A-Z0-9][A-Z0-9-]{0,11}$/, 'Area code: capitals, digits and hyphens, at most 12')

/** An area is walked as one: `walkPosition` is its place in the walk through the site, `level` the floor it is on. */
const areaFields = {
  code: AreaCode,
  name: text(80, 1),
  walkPosition: count('Walking position', 0, 100_000),
  level: count('Level', -20, 60),
}

export const AreaInput = z.strictObject(areaFields)
export const Area = z.object({ areaId: z.uuid(), ...areaFields, valveCount: count('Valves', 0, 10_000_000) })
export type Area = z.infer<typeof Area>

export const listAreas = endpoint({
  method: 'GET',
  path: '/api/areas',
  who: everybody,
  ok: z.object({ areas: z.array(Area) }),
  status: 200,
})

export const addArea = endpoint({
  method: 'POST',
  path: '/api/areas',
  who: registerKeepers,
  body: AreaInput,
  ok: Area,
  status: 201,
})

export const changeArea = endpoint({
  method: 'PUT',
  path: '/api/areas/:code',
  who: registerKeepers,
  params: z.strictObject({ code: AreaCode }),
  body: AreaInput,
  ok: Area,
  status: 200,
})
