import type { PackingComparison } from './compare.ts'

/** What is said of one packing, as data: for a screen that sets it otherwise than as a sentence. */
export type PackingPart =
  | {
      readonly kind: 'median'
      readonly name: string
      readonly median: number
      readonly lower: number | null
      readonly upper: number | null
    }
  | { readonly kind: 'more than half still going'; readonly name: string; readonly at: number }
  | { readonly kind: 'too few'; readonly name: string; readonly ended: number; readonly of: number }

export interface SentenceWords {
  /** Where they were compared: “steam above 250 °C”. */
  readonly service: string
}

/**
 * What a comparison says of each packing.
 *
 * @example partsOf({ groups: [] }) // → []
 */
export function partsOf({ groups }: Pick<PackingComparison, 'groups'>): PackingPart[] {
  return groups.map((group): PackingPart => {
    const { name, isTooFew, ended, lives, median, medianLower, medianUpper } = group
    if (isTooFew) return { kind: 'too few', name, ended, of: lives }
    if (median === null) return { kind: 'more than half still going', name, at: group.longest ?? 0 }
    return { kind: 'median', name, median, lower: medianLower, upper: medianUpper }
  })
}

/**
 * Whether a difference may be chance; null where none was computed.
 *
 * @example verdictOf({ confidence: 0.95, difference: null }) // → null
 */
export function verdictOf({
  confidence,
  difference,
}: Pick<PackingComparison, 'confidence' | 'difference'>): 'unlikely to be chance' | 'may be chance' | null {
  if (difference === null) return null
  return difference.p < 1 - confidence ? 'unlikely to be chance' : 'may be chance'
}

/**
 * A comparison in a sentence: medians with their limits, then what has none yet, then whether the difference may be chance.
 *
 * @source SRC-768 what is said to be unlikely to be chance (docs/sources.md)
 * @param result of comparePackings
 * @example comparisonSentence({ confidence: 0.95, difference: null, groups: [] }, { service: 'steam' }) // → 'In steam no packing is known.'
 */
export function comparisonSentence(
  result: Pick<PackingComparison, 'confidence' | 'groups' | 'difference'>,
  words: SentenceWords,
): string {
  const parts = partsOf(result)
  const clauses = [
    medians(parts.filter((part) => part.kind === 'median')),
    parts
      .filter((part) => part.kind === 'more than half still going')
      .map(({ name, at }) => `of ${name} more than half were still going at ${months(at)}`)
      .join(', '),
    fewOf(parts.filter((part) => part.kind === 'too few')),
    differenceIn(result),
  ].filter((clause) => clause !== '')
  return `In ${words.service} ${clauses.length === 0 ? 'no packing is known' : clauses.join('; ')}.`
}

function medians(parts: readonly Extract<PackingPart, { kind: 'median' }>[]): string {
  return parts
    .map(({ name, median, lower, upper }, index) => {
      const said = index === 0 ? `${name} lasts a median of ${months(median)}` : `${name} ${figure(median)}`
      return `${said}${limits(lower, upper)}`
    })
    .join(', ')
}

function limits(lower: number | null, upper: number | null): string {
  if (lower === null) return upper === null ? '' : ` (at most ${figure(upper)})`
  return upper === null ? ` (${figure(lower)} or more)` : ` (${figure(lower)} to ${figure(upper)})`
}

function fewOf(parts: readonly Extract<PackingPart, { kind: 'too few' }>[]): string {
  if (parts.length === 0) return ''
  const counted = parts.map(({ name, ended, of }) => `${name} ${ended} of ${of}`)
  return `too few have ended to compare: ${counted.join(', ')}`
}

function differenceIn(result: Pick<PackingComparison, 'confidence' | 'difference'>): string {
  const verdict = verdictOf(result)
  if (result.difference === null || verdict === null) return ''
  const { between, p } = result.difference
  const [what, be] = between.length > 2 ? ['the differences', 'are'] : ['the difference', 'is']
  return `${what} ${verdict === 'may be chance' ? verdict : `${be} ${verdict}`} (${chance(p)})`
}

/** Three decimals where they decide, and never none or certain. */
function chance(p: number): string {
  if (p < 0.001) return 'p < 0.001'
  if (p > 0.99) return 'p > 0.99'
  return `p = ${p.toFixed(p < 0.1 ? 3 : 2)}`
}

function months(value: number): string {
  const said = figure(value)
  return `${said} ${said === '1' ? 'month' : 'months'}`
}

/** Months, to a tenth where they are few. */
function figure(value: number): string {
  return value < 10 ? String(Number(value.toFixed(1))) : value.toFixed(0)
}
