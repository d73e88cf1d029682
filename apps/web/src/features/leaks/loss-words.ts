import type { LeakLoss } from '@glandkeeper/contract/leak-losses'
import { formatCount } from '../../ui/count.ts'

const NBSP = '\u00a0'

interface Range {
  readonly middle: number
  readonly low: number
  readonly high: number
}

interface Scale {
  readonly from: number
  readonly times: number
  readonly unit: string
}

/** Leaks lie between a steam jet and a trace that only a meter finds: each in the unit in which it can be read. */
const masses: readonly Scale[] = [
  { from: 0.1, times: 1, unit: 'kg/h' },
  { from: 1e-4, times: 1e3, unit: 'g/h' },
  { from: 0, times: 1e6, unit: 'mg/h' },
]

/**
 * What is lost in an hour with its interval, in the unit of its middle.
 *
 * @example massInWords({ middle: 1.24, low: 0.8, high: 1.9 }) // → '1.2 kg/h (0.80 to 1.9)'
 */
export function massInWords(range: Range): string {
  return rangeIn(range, masses)
}

const carbons: readonly Scale[] = [
  { from: 1000, times: 1e-3, unit: 't CO2e' },
  { from: 0, times: 1, unit: 'kg CO2e' },
]

export function carbonInWords(range: Range): string {
  return rangeIn(range, carbons)
}

/** In the money of the site, whatever that is. */
export function moneyInWords(range: Range): string {
  return rangeIn(range, [{ from: 0, times: 1, unit: '' }])
}

function rangeIn({ middle, low, high }: Range, scales: readonly Scale[]): string {
  const first = scales[0] ?? { times: 1, unit: '' }
  const { times, unit } = middle > 0 ? (scales.find(({ from }) => middle >= from) ?? first) : first
  const figure = `${fewFigures(middle * times)}${unit === '' ? '' : NBSP + unit}`
  // What has no range of its own, as a published default, is not given one.
  return low === high ? figure : `${figure} (${fewFigures(low * times)} to ${fewFigures(high * times)})`
}

/** Two figures, or whole numbers: none of these methods is good for more. */
function fewFigures(value: number): string {
  if (value === 0) return '0'
  if (value >= 1000) return formatCount(Number(value.toPrecision(3)))
  if (value >= 10) return String(Math.round(value))
  return value >= 0.01 ? value.toPrecision(2) : 'under 0.01'
}

const marks: Readonly<Record<LeakLoss['mark'], string>> = {
  read: 'formula read in its source',
  'worked out': 'worked out from a formula that is read',
  'from memory': 'formula from memory: confirm it before you rely on the figure',
  'common practice, no source': 'common practice, no source',
  'set by us': 'figure set by us',
}

export function markInWords(mark: LeakLoss['mark']): string {
  return marks[mark]
}

/** What loses most stands on top. */
export function mostFirst<Loss extends { readonly kilogramsPerHour: Range }>(losses: readonly Loss[]): Loss[] {
  return losses.toSorted((one, other) => other.kilogramsPerHour.middle - one.kilogramsPerHour.middle)
}
