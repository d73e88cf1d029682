/**
 * A tag may hold letters of any script and signs a file name may not: what is left of it in plain letters.
 *
 * @example plainLetters('BM 33/07') // → 'BM-33-07'
 */
export function plainLetters(tag: string): string {
  return tag.replaceAll(/[^A-Za-z0-9._-]+/g, '-')
}
