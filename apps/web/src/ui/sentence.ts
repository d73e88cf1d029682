/**
 * The server's details are parts of sentences: here they begin with a capital and end with a full stop.
 *
 * @example asSentence('nothing was written') // → 'Nothing was written.'
 */
export function asSentence(detail: string): string {
  const trimmed = detail.trim()
  if (trimmed === '') return ''
  return `${trimmed.charAt(0).toUpperCase()}${trimmed.slice(1)}${/[.!?]$/.test(trimmed) ? '' : '.'}`
}
