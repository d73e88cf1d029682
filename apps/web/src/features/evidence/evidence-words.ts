import { MOST_ENTRIES_IN_EXPORT } from '@glandkeeper/contract/evidence'
import { counted, formatCount } from '../../ui/count.ts'

const NO_BREAK_SPACE = '\u00a0'

/** How many entries a choice is, and what to do where that is none or too many. */
export function countInWords(entries: number): { readonly words: string; readonly mayTake: boolean } {
  if (entries === 0) return { words: 'No entry fits: choose other days or another valve.', mayTake: false }
  if (entries > MOST_ENTRIES_IN_EXPORT) {
    return {
      words: `${counted(entries, 'entry', 'entries')}: too many for one file, which holds at most ${formatCount(MOST_ENTRIES_IN_EXPORT)}. Choose an area or a shorter time.`,
      mayTake: false,
    }
  }
  return { words: `${counted(entries, 'entry', 'entries')}.`, mayTake: true }
}

/** @example inGroups('3f9a01bc') // → ['3f9a', '01bc'] */
export function inGroups(fingerprint: string): string[] {
  return fingerprint.match(/.{1,4}/g) ?? []
}

/**
 * How long a proof took, as a person says it.
 *
 * @example secondsInWords(4.24) // → '4.2 s'
 * @example secondsInWords(125) // → '2 min 5 s'
 */
export function secondsInWords(seconds: number): string {
  if (seconds < 0.1) return `under 0.1${NO_BREAK_SPACE}s`
  if (seconds < 59.95) return `${seconds.toFixed(1)}${NO_BREAK_SPACE}s`
  const whole = Math.round(seconds)
  const rest = whole % 60
  return `${Math.floor(whole / 60)}${NO_BREAK_SPACE}min${rest > 0 ? ` ${rest}${NO_BREAK_SPACE}s` : ''}`
}

/** @example sizeInWords(1_250_000) // → '1.3 MB' */
export function sizeInWords(bytes: number): string {
  if (bytes < 1000) return counted(bytes, 'byte')
  if (bytes < 1_000_000) return `${Math.round(bytes / 1000)}${NO_BREAK_SPACE}kB`
  return `${(bytes / 1_000_000).toFixed(1)}${NO_BREAK_SPACE}MB`
}

interface Proof {
  readonly isWhole: boolean
  readonly entries: number
  readonly position: number | null
  readonly seals: number
}

/** What a proof found, in one sentence. */
export function verdictInWords({ isWhole, entries, position }: Proof): string {
  if (!isWhole) return position === null ? 'The record is broken' : `The record is broken at entry ${formatCount(position)}`
  if (entries === 0) return 'There is no entry yet'
  return 'The record is whole'
}

/** What stands behind a good verdict; of one that is bad the server says it. */
export function restsOnInWords({ entries, seals }: Proof): string {
  if (entries === 0) return 'Nothing has been entered at this site, and so nothing can have been changed.'
  const joined =
    entries === 1
      ? 'Its one entry stands as it was written.'
      : `All ${formatCount(entries)} entries stand as they were written, each joined to the one before it.`
  if (seals === 0) return joined
  return `${joined} ${seals === 1 ? 'The head that was signed earlier still stands' : `All ${formatCount(seals)} heads that were signed earlier still stand`} in it.`
}

/** What came after a proof is not proved by it; null where nothing did. */
export function sinceInWords(proved: number, entries: number): string | null {
  const since = entries - proved
  return since > 0
    ? `${counted(since, 'entry has', 'entries have')} come since, and ${since === 1 ? 'is' : 'are'} not proved yet.`
    : null
}

/** A name that says which key is inside. @example keyFileName('3f9a01bc77') // → 'glandkeeper-key-3f9a01bc.pem' */
export function keyFileName(fingerprint: string): string {
  return `glandkeeper-key-${fingerprint.slice(0, 8)}.pem`
}
