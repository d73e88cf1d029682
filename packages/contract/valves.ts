import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { TimelineEntry } from './events.ts'
import { Gland } from './glands.ts'
import { everybody, registerKeepers } from './roles.ts'
import { count, quantity } from './quantity.ts'
import { ExpectedReading, GlandState, ReservePoint } from './reserve.ts'
import { text } from './text.ts'

export const ValveTag = z
  .string()
  .trim()
  .min(1)
  .max(40)
  .regex(/^[\p{L}\p{N}][\p{L}\p{N} ._/+-]*$/u, 'Tag: letters, digits, spaces and . _ / + - only')

export const ValveKind = z.enum([
  'gate',
  'globe',
  'ball',
  'butterfly',
  'plug',
  'needle',
  'knife gate',
  'control',
  'diaphragm',
  'other',
])
export const StemMovement = z.enum(['rising', 'turning', 'rising and turning', 'quarter turn'])
export const Phase = z.enum(['steam', 'gas', 'liquid', 'slurry'])
/** How a fitter gets to the gland. */
export const Access = z.enum(['floor', 'platform', 'ladder', 'scaffold', 'confined space'])
export const Criticality = z.enum(['low', 'ordinary', 'high'])

export const temperature = quantity({ label: 'Temperature', unit: '°C', min: -273, max: 1000, step: 1, usual: [-40, 550] })
/** Above atmospheric pressure. */
export const pressure = quantity({ label: 'Pressure', unit: 'bar', min: -1, max: 1000, step: 0.1, usual: [0, 160] })

/** Metres from the area's own zero: what the walking order is worked out from. Negative is west, or south. */
export const place = (towards: 'east' | 'north') =>
  quantity({ label: `Metres ${towards}`, unit: 'm', min: -10_000, max: 10_000, step: 0.1, usual: [-500, 500] })

/** What a planner or engineer knows and may change. */
export const ValveInput = z.strictObject({
  tag: ValveTag,
  description: text(200),
  areaCode: AreaCode,
  walkPosition: count('Walking position', 0, 1_000_000),
  level: count('Level', -20, 60),
  east: place('east').nullable(),
  north: place('north').nullable(),
  service: text(40, 1),
  fluid: text(80),
  phase: Phase,
  temperature: temperature.nullable(),
  pressure: pressure.nullable(),
  valveKind: ValveKind,
  stemMovement: StemMovement.nullable(),
  /** Valves that are isolated, and so repacked, together. Empty: a boundary of its own. */
  isolationBoundary: text(40),
  isolatesOnLine: z.boolean(),
  access: Access,
  criticality: Criticality,
  gland: Gland,
})
export type ValveInput = z.infer<typeof ValveInput>

export const Valve = z.object({
  ...ValveInput.shape,
  valveId: z.uuid(),
  areaName: z.string(),
  /** Goes up by one with each change; a change names the one it was made from. */
  revision: count('Revision', 1, 1_000_000),
  retiredAt: z.iso.datetime().nullable(),
})
export type Valve = z.infer<typeof Valve>

/** From one repack to the next. The first one known may have begun before the records. */
export const PackingLife = z.object({
  from: z.iso.datetime().nullable(),
  to: z.iso.datetime().nullable(),
  family: z.string().nullable(),
  rings: count('Rings', 0, 40).nullable(),
})

export const RegisterChange = z.object({
  at: z.iso.datetime(),
  by: z.string(),
  what: z.string(),
  changes: z.array(z.object({ field: z.string(), before: z.string(), after: z.string() })),
})

export const ValveHistory = z.object({
  valve: Valve,
  state: GlandState,
  /** Null where nothing has been read yet. */
  expects: ExpectedReading.nullable(),
  points: z.array(ReservePoint),
  lives: z.array(PackingLife),
  timeline: z.array(TimelineEntry),
  registerChanges: z.array(RegisterChange),
})
export type ValveHistory = z.infer<typeof ValveHistory>

const byTag = z.strictObject({ tag: ValveTag })

export const showValve = endpoint({
  method: 'GET',
  path: '/api/valves/:tag',
  who: everybody,
  params: byTag,
  ok: ValveHistory,
  status: 200,
})

export const addValve = endpoint({
  method: 'POST',
  path: '/api/valves',
  who: registerKeepers,
  body: ValveInput,
  ok: Valve,
  status: 201,
})

export const changeValve = endpoint({
  method: 'PUT',
  path: '/api/valves/:tag',
  who: registerKeepers,
  params: byTag,
  body: z.strictObject({ revision: count('Revision', 1, 1_000_000), valve: ValveInput }),
  ok: Valve,
  status: 200,
})

/** A retired valve leaves the board and keeps its history. */
export const retireValve = endpoint({
  method: 'POST',
  path: '/api/valves/:tag/retire',
  who: registerKeepers,
  params: byTag,
  body: z.strictObject({ revision: count('Revision', 1, 1_000_000), reason: text(200, 1) }),
  ok: Valve,
  status: 200,
})
