import { idOfParts } from '../../platform/ids.ts'
import type { JudgeContext, ReadRow } from './judge.ts'

export interface EntryName {
  /** Null where tag, time or kind could not be read, or another row of the file has the name. */
  readonly id: string | null
  readonly occurrence: number | null
  readonly fault: string | null
}

/**
 * The name of an entry: its valve, time and kind, and which of several alike it is. The valve by its id, because a tag
 * may be given anew. Every row is counted, good or bad, so that mending one does not move the others.
 */
export function nameEntry({ siteId, seen }: JudgeContext, { given, raw }: ReadRow, valveId: string | undefined): EntryName {
  const { tag, takenAt, kind, occurrence: said } = given
  if (tag === undefined || takenAt === undefined || kind === undefined) {
    return { id: null, occurrence: typeof said === 'number' ? said : null, fault: null }
  }
  if (typeof said === 'number' && said < 1) return { id: null, occurrence: null, fault: 'count from 1' }
  const parts = [siteId, valveId ?? `tag ${String(tag)}`, String(takenAt), String(kind)]
  const key = parts.join('\u001f')
  const nameOf = (occurrence: number) => `${key}\u001f${occurrence}`
  let occurrence = typeof said === 'number' ? said : (seen.get(key) ?? 0) + 1
  if (said === undefined) {
    // A number that a row gave itself is not given again.
    while (seen.has(nameOf(occurrence))) occurrence += 1
    seen.set(key, occurrence)
  }
  const first = seen.get(nameOf(occurrence))
  if (first !== undefined) return { id: null, occurrence, fault: `row ${first} is number ${occurrence} of these already` }
  seen.set(nameOf(occurrence), raw.row)
  return { id: idOfParts([...parts, String(occurrence)]), occurrence, fault: null }
}
