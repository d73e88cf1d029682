import { z } from 'zod'

/** NUL ends a text in PostgreSQL, half a surrogate pair is no letter; tab and line break are the only controls kept. */
// oxlint-disable-next-line no-control-regex -- these are the characters meant
const NOT_KEPT = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/

/**
 * Text that a person writes, without blanks at its ends.
 *
 * @example text(10).parse('  Feed pump ') // → 'Feed pump'
 */
export function text(most: number, least = 0) {
  return z
    .string()
    .trim()
    .min(least, least === 1 ? 'must not be empty' : `at least ${least} letters`)
    .max(most, `at most ${most} letters`)
    .refine((value) => !NOT_KEPT.test(value) && isWellFormed(value), 'has characters that cannot be kept')
}

function isWellFormed(value: string): boolean {
  return !/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/.test(value)
}
