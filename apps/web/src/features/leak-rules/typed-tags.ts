import { ValveTag } from '@glandkeeper/contract/valves'

/** As many as the register takes at once. */
export const MOST_TAGS = 500

interface TypedTags {
  readonly tags: readonly string[]
  readonly fault: string | null
}

/** Tags as they come out of a sheet or a mail: one a line, or with commas, semicolons or tabs between; twice is once. A tag may have a blank in it. */
export function tagsIn(text: string): TypedTags {
  const tags = [...new Set(text.split(/[\n\r,;\t]+/).map((tag) => tag.trim()))].filter((tag) => tag !== '')
  const odd = tags.filter((tag) => !ValveTag.safeParse(tag).success)
  return { tags, fault: faultIn(tags, odd) }
}

function faultIn(tags: readonly string[], odd: readonly string[]): string | null {
  if (tags.length === 0) return 'Is needed'
  if (odd.length > 0) return `${odd.slice(0, 3).join(', ')}: a tag has letters, digits, blanks and . _ / + - only`
  return tags.length > MOST_TAGS ? `${tags.length} tags: ${MOST_TAGS} at most at once` : null
}
