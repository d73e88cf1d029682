/**
 * The server's details are parts of sentences: here they begin with a capital and end with a full stop.
 *
 * @example asSentence('nothing was written') // → 'Nothing was written.'
 */
export function asSentence(detail: string): string {
  const trimmed = detail.trim()
  if (trimmed === '') return ''
  return `${capital(trimmed)}${/[.!?]$/.test(trimmed) ? '' : '.'}`
}

/** @example capital('half turn') // → 'Half turn' */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}
