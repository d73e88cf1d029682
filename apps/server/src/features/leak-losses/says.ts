import type { LossMethod } from '@glandkeeper/contract/leak-losses'
import type { SettingValues } from '@glandkeeper/contract/settings'

export interface LossesTold {
  readonly methods: readonly LossMethod[]
  readonly settings: SettingValues
  readonly withoutPrice: number
  readonly withoutFigure: number
  /** Of those without a figure: an opening was judged, and the pressure is not known or beyond the method. */
  readonly openingsWithoutLoss: number
  readonly beyond: number
}

const ofMethod: Readonly<Record<LossMethod, string>> = {
  'screening correlation':
    'Screening values are turned into kg/h by a published average of many valves: one may leak ten times more or less.',
  'default zero': 'A reading at background counts with the published factor for it.',
  'pegged factor': 'Where a meter stood at its end, the published factor of that end counts: how much more it was nobody knows.',
  'drops counted': 'Drops are counted with the volume that is set, at 1 kg a litre.',
  'steam through an opening':
    'Steam through an opening is worked out by Napier, for an ideal nozzle and dry saturated steam: the most of the three methods on the bench.',
  'water through an opening': 'Water through an opening is worked out for a sharp edge (0.61) and cold water.',
  'air through an opening': 'Gas through an opening is worked out as air, choked, through a sharp edge (0.65).',
}

/** How the figures were made, how far they hold, and what is not in them: a sentence each. */
export function lossesInWords(told: LossesTold): string[] {
  const { methods, settings, withoutPrice, withoutFigure, openingsWithoutLoss, beyond } = told
  return [
    'Each leak counts with the last figure somebody gave of it while it leaked; the length of a plume gives none.',
    ...Object.entries(ofMethod).flatMap(([method, says]) => (methods.some((one) => one === method) ? [says] : [])),
    'Low and high hold the error of measuring only. Sums take these errors to be independent: where one meter or one volume of a drop is wrong for all, the range is wider.',
    `A year has ${inThousands(settings.hoursPerYear)} hours under pressure, as set, and each leak is taken to go on through all of them.`,
    ...(withoutPrice > 0 ? [`${leaks(withoutPrice)} without a price: not in the money.`] : []),
    ...(withoutFigure > 0 ? [`${leaks(withoutFigure)} without a figure: in none of the sums.`] : []),
    ...(openingsWithoutLoss > 0
      ? [`Of these ${openingsWithoutLoss} with an opening: no pressure of the valve is known, or it is too low for the method.`]
      : []),
    ...(beyond > 0 ? [`${leaks(beyond)} more stand open and are not worked out here: the worst come first.`] : []),
  ]
}

function leaks(count: number): string {
  return count === 1 ? 'One leak' : `${inThousands(count)} leaks`
}

function inThousands(value: number): string {
  return value.toLocaleString('en-GB', { maximumFractionDigits: 0 })
}
