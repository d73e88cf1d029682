import { boxBore, stemDiameter } from '@glandkeeper/contract/glands'
import { fitSection, ROLL_DOWN_LIMIT, type SectionFit } from '@glandkeeper/engines/gland/fitted-section'
import { formatMillimetres } from '@glandkeeper/units/format'
import { z } from 'zod'
import { calculator, OPEN_GLAND } from '../calculator.ts'
import { section as sectionQuantity, sentences, share, signedLength, space } from '../figures.ts'

const SectionRow = z.object({
  designation: z.string().meta({ title: 'Section' }),
  size: sectionQuantity,
  over: signedLength('Over the space', 0.01),
  verdict: z.string().meta({ title: 'How it sits' }),
})

export const section = calculator({
  name: 'section',
  shelf: 'cut',
  title: 'Section',
  question: 'Which square of cord goes into this box?',
  input: z.strictObject({
    boxBore,
    stemDiameter,
    rollDownLimit: share('Rolled thinner by at most', 0.5).default(ROLL_DOWN_LIMIT),
  }),
  output: z.object({
    space,
    take: z.string().nullable().meta({ title: 'Take' }),
    nearest: z.array(SectionRow).meta({ title: 'Nearest of each system' }),
    says: sentences('What to do'),
  }),
  example: { boxBore: 45, stemDiameter: 28 },
  notes: {
    stemDiameter: 'measured where the packing sits, not outside',
    rollDownLimit: 'share of the section; set by us, your site decides',
  },
  formula: ['section = (box bore − stem) / 2'],
  limits:
    'Holds for square cord and a stem in the middle of its box. Cord varies by a few per cent itself: measure the cord. A section a little over the space may be rolled thinner with a bar on a bench, never hammered.',
  sources: ['SRC-101', 'SRC-104', 'SRC-106', 'SRC-107'],
  caution: OPEN_GLAND,
  compute(input) {
    const fitted = fitSection(input)
    if (!fitted.ok) return fitted
    const { space: found, metric, inch, recommended } = fitted
    const nearest = [metric, inch].filter((fit) => fit !== null)
    return {
      ok: true,
      space: found,
      take: recommended && `${recommended.section.designation}: ${verdictInWords(recommended)}`,
      nearest: nearest.map((fit) => ({
        designation: fit.section.designation,
        size: fit.section.size,
        over: fit.over,
        verdict: verdictInWords(fit),
      })),
      says:
        recommended === null
          ? ['no listed section fits or may be rolled to this space: measure again, or have rings made to size']
          : recommended.verdict === 'roll down'
            ? ['roll it thinner with a bar on a bench, evenly and a little at a time; never hammer it']
            : [],
    }
  },
})

/** `roll to 8.5 mm`, `too small: leaves a gap of 0.5 mm on each side`. */
function verdictInWords(fit: SectionFit): string {
  switch (fit.verdict) {
    case 'fits':
      return 'fits'
    case 'roll down':
      return `roll to ${formatMillimetres(fit.rollTo ?? fit.section.size, 2)}`
    case 'too big':
      return 'too big'
    case 'too small':
      return `too small: leaves a gap of ${formatMillimetres(fit.gapPerSide, 2)} on each side`
  }
}
