import { Phase, pressure, StemMovement, temperature } from '@glandkeeper/contract/valves'
import { quantity } from '@glandkeeper/contract/quantity'
import { type FamilyFigures, type LibraryFamily, packingFamilies } from '@glandkeeper/engines/packing/families'
import { rankFamilies } from '@glandkeeper/engines/packing/suitability'
import { z } from 'zod'
import { calculator } from '../calculator.ts'

const acidity = quantity({ label: 'Acidity', unit: 'pH', min: 0, max: 14, step: 0.1 })

export const whichPacking = calculator({
  name: 'which-packing',
  shelf: 'packing',
  title: 'Which packing stands it',
  question: 'Which kinds of packing stand this service, and why not the others?',
  input: z.strictObject({
    phase: Phase.meta({ title: 'It carries' }),
    temperature: temperature.optional(),
    pressure: pressure.optional(),
    ph: acidity.optional(),
    oxidising: z.enum(['not known', 'yes', 'no']).meta({ title: 'Oxidising' }).default('not known'),
    stemMovement: StemMovement.meta({ title: 'The stem' }).optional(),
  }),
  output: z.object({
    ranking: z
      .array(
        z.object({
          name: z.string().meta({ title: 'Packing' }),
          verdict: z.string().meta({ title: 'Verdict' }),
          reasons: z.string().meta({ title: 'Because' }),
        }),
      )
      .meta({ title: 'The best first' }),
  }),
  example: { phase: 'steam', temperature: 184, pressure: 10, ph: 7, oxidising: 'no', stemMovement: 'rising' },
  notes: { ph: 'empty where not known' },
  formula: ['each limit by itself: temperature, pressure, acidity, oxidising fluids'],
  limits:
    'Broad figures of common practice and from memory, no maker’s data: the sheet of the packing you buy decides. Limits are taken one by one; many packings stand less pressure when hot.',
  sources: ['SRC-600', 'SRC-601', 'SRC-602', 'SRC-610', 'SRC-611'],
  compute({ temperature: heat, pressure: gauge, ph, stemMovement, oxidising, phase }) {
    const ranked = rankFamilies({
      phase,
      isOxidising: oxidising === 'not known' ? null : oxidising === 'yes',
      temperature: heat ?? null,
      pressure: gauge ?? null,
      ph: ph === undefined ? null : { lowest: ph, highest: ph },
      stemMovement: stemMovement ?? null,
      families: packingFamilies.map((family) => ({ ...family, figures: figuresOf(family) })),
    })
    if (!ranked.ok) return ranked
    return {
      ok: true,
      ranking: ranked.ranking.map(({ name, verdict, reasons }) => ({
        name,
        verdict,
        reasons: reasons.map(({ detail }) => detail).join('; '),
      })),
    }
  },
})

/** The figures without their marks. */
function figuresOf({ figures }: LibraryFamily): FamilyFigures {
  return Object.fromEntries(Object.entries(figures).map(([name, { value }]) => [name, value])) as unknown as FamilyFigures
}
