import { ValveTag } from '@glandkeeper/contract/valves'

/**
 * The tag a scanned code stands for: that of our own address, whatever the server was called when the label was
 * printed, or a bare tag. Null for every other code.
 */
export function tagInCode(text: string): string | null {
  const inAddress = /^https?:\/\/[^/]+\/v\/([^/?#]+)$/i.exec(text.trim())?.[1]
  const tag = inAddress === undefined ? text.trim() : decoded(inAddress)
  return tag === null ? null : (ValveTag.safeParse(tag).data ?? null)
}

function decoded(part: string): string | null {
  try {
    return decodeURIComponent(part)
  } catch {
    return null
  }
}
