import { z } from 'zod'
import { endpoint } from './endpoint.ts'
import { FamilyForm } from './family-form.ts'
import { Gland } from './glands.ts'
import { count, quantity } from './quantity.ts'
import { everybody } from './roles.ts'
import { Phase, pressure, temperature, ValveTag } from './valves.ts'

const millimetres = (label: string, max: number, min = 0) => quantity({ label, unit: 'mm', min, max, step: 0.1 })
const torque = quantity({ label: 'Torque on each nut', unit: 'N·m', min: 0, max: 1e8, step: 0.1 })
const angle = (label: string) => quantity({ label, unit: '°', min: 0, max: 360, step: 1 })
const ringCount = (label: string) => count(label, 1, 10_000)

/** Which cord to take for the space between stem and box. */
export const CardCord = z.object({
  space: millimetres('Space between stem and box', 300),
  /** Nearest listed size that fits or rolls down; null where there is none. */
  designation: z.string().nullable(),
  size: millimetres('Listed section', 300).nullable(),
  /** What a thicker cord is rolled to on a bench; null where it fits as it is. */
  rollTo: millimetres('Rolled section', 300).nullable(),
  says: z.string(),
})

/** One ring on the bench: what to measure, and how to wind the cord for all of them. */
export const CardCut = z.object({
  /** Between the cut and the cord. */
  angle: quantity({ label: 'Skive angle', unit: '°', min: 1, max: 90, step: 1 }),
  /** At mid-width, which is also what each long edge measures. */
  length: millimetres('Length of a ring', 3000),
  mandrel: millimetres('Mandrel', 500),
  wraps: ringCount('Wraps to wind').nullable(),
})

export const CardRings = z.object({
  count: ringCount('Rings'),
  says: z.array(z.string()),
})

export const CardJoint = z.object({ ring: ringCount('Ring'), angle: angle('Joint'), clock: z.string() })

/** Where the follower is expected to stand when the set is loaded, and what to do when it does not. */
export const CardGap = z.object({
  expected: millimetres('Gap when loaded', 1500),
  least: millimetres('Least gap that is right', 1500),
  most: millimetres('Largest gap that is right', 1500),
  below: z.string(),
  above: z.string(),
})

/** One line of the load table; without a figure it is done by hand. */
export const CardStep = z.object({ torque: torque.nullable(), says: z.string() })

export const CardLoad = z.object({
  stress: quantity({ label: 'Gland stress', unit: 'MPa', min: 0, max: 10_000, step: 0.1 }),
  force: quantity({ label: 'Gland load', unit: 'N', min: 0, max: 1e9, step: 1 }),
  torque,
  says: z.array(z.string()),
  /** What stands against this torque; null where nothing does. */
  warning: z.string().nullable(),
})

export const CardSpanner = z.object({
  marking: z.string(),
  acrossFlats: millimetres('Across flats', 200),
  hexagon: z.string(),
})

/** What nobody knows of this valve and the work needs: left open, with a line to write on. */
export const CardOpen = z.object({ what: z.string(), says: z.string() })

/**
 * Everything a fitter takes to the bench and to the valve for one repack. Words are as printed; a figure that is not
 * known is null, is named in `open`, and nothing that follows from it is worked out.
 */
export const CutCard = z.object({
  tag: z.string(),
  description: z.string(),
  areaName: z.string(),
  service: z.string(),
  fluid: z.string(),
  phase: Phase,
  temperature: temperature.nullable(),
  pressure: pressure.nullable(),
  madeOn: z.iso.date(),
  family: z.string().nullable(),
  form: FamilyForm.nullable(),
  gland: Gland,
  cord: CardCord.nullable(),
  rings: CardRings.nullable(),
  cut: CardCut.nullable(),
  cutNotes: z.array(z.string()),
  joints: z.array(CardJoint),
  jointNotes: z.array(z.string()),
  gap: CardGap.nullable(),
  load: CardLoad.nullable(),
  steps: z.array(CardStep),
  proof: z.array(z.string()),
  followUp: z.array(z.string()),
  spanners: z.array(CardSpanner),
  threadCautions: z.array(z.string()),
  hazards: z.array(z.string()),
  cautions: z.array(z.string()),
  open: z.array(CardOpen),
  /** Where the expected figures come from, in a line. */
  basis: z.string(),
})
export type CutCard = z.infer<typeof CutCard>

export const PaperSize = z.enum(['A5', 'A4'])
export type PaperSize = z.infer<typeof PaperSize>

const byTag = z.strictObject({ tag: ValveTag })

export const showCutCard = endpoint({
  method: 'GET',
  path: '/api/valves/:tag/cut-card',
  who: everybody,
  params: byTag,
  ok: CutCard,
  status: 200,
})

export const printCutCard = endpoint({
  method: 'GET',
  path: '/api/valves/:tag/cut-card.pdf',
  who: everybody,
  params: byTag,
  query: z.strictObject({ size: PaperSize.default('A5') }),
  ok: z.instanceof(Uint8Array),
  okKind: 'pdf',
  status: 200,
})
