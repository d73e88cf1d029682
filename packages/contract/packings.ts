import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { FamilyForm } from './family-form.ts'
import { count, quantity } from './quantity.ts'
import { everybody, registerKeepers } from './roles.ts'
import { Confirmed, FigureMark } from './settings.ts'
import { text } from './text.ts'
import { Phase, pressure, temperature, ValveTag } from './valves.ts'

export const FamilyName = text(60, 2)
export const Caution = z.enum([
  'dust',
  'lead',
  'asbestos suspect',
  'corrodes stainless steel',
  'oxidising fluids',
  'no smoking or hot work',
  'wire scores stems',
  'wears stems',
])
export type Caution = z.infer<typeof Caution>

const heat = (label: string) => quantity({ label, unit: '°C', min: -273, max: 1200, step: 1, usual: [-200, 650] })
const acidity = (label: string) => quantity({ label, unit: 'pH', min: 0, max: 14, step: 0.1 })
const ph = acidity('pH')

/** The figures of a packing family, as a person confirms or changes them one by one. */
export const familyFigures = {
  lowestTemperature: heat('Lowest temperature'),
  highestTemperature: heat('Highest temperature'),
  highestSteamTemperature: heat('Highest temperature in steam'),
  highestPressure: quantity({ label: 'Highest pressure', unit: 'bar', min: 0.1, max: 1000, step: 1, usual: [1, 400] }),
  lowestPh: acidity('Most acid'),
  highestPh: acidity('Most caustic'),
  consolidation: quantity({ label: 'Consolidation', unit: 'ratio', min: 0.01, max: 0.6, step: 0.01, usual: [0.1, 0.4] }),
  friction: quantity({ label: 'Friction on the stem', unit: 'ratio', min: 0.01, max: 0.6, step: 0.01, usual: [0.04, 0.3] }),
  lateralRatio: quantity({ label: 'Lateral ratio', unit: 'ratio', min: 0.05, max: 1, step: 0.01, usual: [0.3, 0.95] }),
  stressFloor: quantity({ label: 'Least gland stress', unit: 'MPa', min: 0.5, max: 200, step: 0.5, usual: [5, 60] }),
  usualLife: quantity({ label: 'Usual life', unit: 'day', min: 1, max: 36_500, step: 30, usual: [90, 4000] }),
} as const
export const FamilyFigures = z.strictObject(familyFigures)
export type FamilyFigures = z.infer<typeof FamilyFigures>
export type FigureName = keyof FamilyFigures
export const figureNames = Object.keys(familyFigures) as FigureName[]

/** The mark is of the default; a figure somebody of the site confirmed stands on their word instead. */
const shown = <Value extends z.ZodType>(value: Value) =>
  z.object({ value, mark: FigureMark.nullable(), confirmed: Confirmed.nullable() })

const ShownFigures = z.object({
  lowestTemperature: shown(familyFigures.lowestTemperature),
  highestTemperature: shown(familyFigures.highestTemperature),
  highestSteamTemperature: shown(familyFigures.highestSteamTemperature),
  highestPressure: shown(familyFigures.highestPressure),
  lowestPh: shown(familyFigures.lowestPh),
  highestPh: shown(familyFigures.highestPh),
  consolidation: shown(familyFigures.consolidation),
  friction: shown(familyFigures.friction),
  lateralRatio: shown(familyFigures.lateralRatio),
  stressFloor: shown(familyFigures.stressFloor),
  usualLife: shown(familyFigures.usualLife),
})

const about = {
  form: FamilyForm,
  description: text(200),
  cautions: z.array(Caution).max(Caution.options.length),
}

/** A kind of packing: one of the library as the site has confirmed it, or one of the site's own. */
export const SiteFamily = z.object({
  name: FamilyName,
  ...about,
  isOwn: z.boolean(),
  isOldStock: z.boolean(),
  figures: ShownFigures,
  /** Nought while nobody of the site has touched it. */
  revision: count('Revision', 0, 1_000_000),
})
export type SiteFamily = z.infer<typeof SiteFamily>

const byFamily = z.strictObject({ family: FamilyName })

export const listFamilies = endpoint({
  method: 'GET',
  path: '/api/packings',
  who: everybody,
  ok: z.object({ families: z.array(SiteFamily) }),
  status: 200,
})

/** A family the library does not have: every figure is the site's own word. */
export const addFamily = endpoint({
  method: 'POST',
  path: '/api/packings',
  who: registerKeepers,
  body: z.strictObject({ name: FamilyName, ...about, figures: FamilyFigures }),
  ok: SiteFamily,
  status: 201,
})

/** The figures named are confirmed as they are given; the others stay as they are. `about` is for families of the site's own. */
export const changeFamily = endpoint({
  method: 'PUT',
  path: '/api/packings/:family',
  who: registerKeepers,
  params: byFamily,
  body: z.strictObject({
    revision: count('Revision', 0, 1_000_000),
    figures: FamilyFigures.partial(),
    about: z.strictObject(about).optional(),
  }),
  ok: SiteFamily,
  status: 200,
})

const used = quantity({ label: 'Share of the limit used', unit: 'ratio', min: 0, max: 1e9, step: 0.01 })

const Advice = z.object({
  name: z.string(),
  verdict: z.enum(['suitable', 'not known', 'outside its limits']),
  /** Where it has used most of its limits; null where nothing could be compared. */
  mostUsed: used.nullable(),
  reasons: z.array(
    z.object({
      code: z.string(),
      standing: z.enum(['within', 'near', 'outside', 'not known', 'note']),
      used: used.nullable(),
      detail: z.string(),
    }),
  ),
})
export type Advice = z.infer<typeof Advice>

export const PackingAdvice = z.object({
  service: z.object({
    fluid: z.string(),
    phase: Phase,
    temperature: temperature.nullable(),
    pressure: pressure.nullable(),
    /** Taken from the name of the fluid and from memory; null where the name says nothing. */
    ph: z.object({ lowest: ph, highest: ph }).nullable(),
    isOxidising: z.boolean().nullable(),
  }),
  /** Null where no repack is recorded. */
  fitted: Advice.nullable(),
  ranking: z.array(Advice),
})
export type PackingAdvice = z.infer<typeof PackingAdvice>

/** The packing that is in, against what goes through the valve; and every other kind, the best first. */
export const advisePacking = endpoint({
  method: 'GET',
  path: '/api/valves/:tag/packing-advice',
  who: everybody,
  params: z.strictObject({ tag: ValveTag }),
  ok: PackingAdvice,
  status: 200,
})
