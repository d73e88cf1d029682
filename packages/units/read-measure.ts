import { spellings } from './written.ts'

export type MeasureProblem =
  | { readonly code: 'measure/empty' }
  | { readonly code: 'measure/no-number'; readonly text: string }
  | { readonly code: 'measure/ambiguous-comma'; readonly text: string }
  | { readonly code: 'measure/unknown-unit'; readonly written: string; readonly unit: string }

export type MeasureResult =
  /** `written` is the unit that was taken, so that the screen can say how it read the text. */
  | { readonly ok: true; readonly value: number; readonly written: string }
  | { readonly ok: false; readonly problem: MeasureProblem }

const vulgar: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

const NUMBER =
  /^(?<sign>[-−+])?(?:(?:(?<whole>\d+)[\s-]+)?(?<top>\d+)\/(?<bottom>\d+)|(?<decimal>\d{1,3}(?: \d{3})+|\d+(?:[.,]\d+)?|[.,]\d+)(?<power>e[-+]?\d+)?)/iu

/**
 * A figure as a person writes it, in the program's unit: `5/16 in`, `1-3/8"`, `12,5`, `150 psi`, `40 ft·lb`.
 * Without a unit it is in `unit` already, but a bare fraction of a length is in inches, as on a rule.
 *
 * @param unit one of the units of written.ts; a unit not listed there takes plain figures only
 * @returns the value, or a named problem; `1,250` is refused because it is read two ways
 * @example readMeasure('5/16 in', 'mm') // → { ok: true, value: 7.9375, written: 'in' }
 * @example readMeasure('1-3/8', 'mm') // → { ok: true, value: 34.925, written: 'in' }
 * @example readMeasure('150 psi', 'bar') // → { ok: true, value: 10.34213593975254, written: 'psi' }
 */
export function readMeasure(text: string, unit: string): MeasureResult {
  const plain = text
    .trim()
    .replaceAll(/[½¼¾⅛⅜⅝⅞]/gu, (sign) => ` ${vulgar[sign] ?? ''}`)
    .trim()
  if (plain === '') return { ok: false, problem: { code: 'measure/empty' } }
  const found = NUMBER.exec(plain)
  if (!found?.groups) return { ok: false, problem: { code: 'measure/no-number', text } }
  if (/^\d+,\d{3}$/.test(found.groups['decimal'] ?? '')) return { ok: false, problem: { code: 'measure/ambiguous-comma', text } }
  const number = numberOf(found.groups)
  if (!Number.isFinite(number)) return { ok: false, problem: { code: 'measure/no-number', text } }
  const isFraction = found.groups['bottom'] !== undefined
  const written = plain.slice(found[0].length).trim() || (isFraction && unit === 'mm' ? 'in' : unit)
  if (written === unit) return { ok: true, value: number, written }
  const spelling = spellings[unit]?.find(({ names }) => names.includes(written.toLowerCase()))
  if (!spelling) return { ok: false, problem: { code: 'measure/unknown-unit', written, unit } }
  return { ok: true, value: (number + (spelling.offset ?? 0)) * spelling.factor, written }
}

function numberOf(parts: Readonly<Record<string, string | undefined>>): number {
  const fraction = parts['bottom'] === undefined ? 0 : Number(parts['top']) / Number(parts['bottom'])
  const decimal = Number((parts['decimal'] ?? '0').replaceAll(' ', '').replace(',', '.') + (parts['power'] ?? ''))
  const size = Number(parts['whole'] ?? 0) + fraction + decimal
  return parts['sign'] === '-' || parts['sign'] === '−' ? -size : size
}
