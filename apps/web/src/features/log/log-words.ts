import type { LogRow } from '@glandkeeper/contract/log'
import { nameInWords } from '@glandkeeper/units/format'
import { counted, formatCount } from '../../ui/count.ts'

type Change = LogRow['changes'][number]

/** Fields of one change shown at once; the rest of many are opened. */
const MOST_AT_ONCE = 4

/** @example fieldInWords('gland.boxBore') // → 'gland, box bore' */
export function fieldInWords(field: string): string {
  return nameInWords(field.replaceAll('.', ', '))
}

/** What shows at once and what is opened: of something new nothing was before, and its fields are only counted. */
export function foldChanges(changes: readonly Change[]): {
  readonly shown: readonly Change[]
  readonly folded: readonly Change[]
} {
  if (isNew(changes)) return { shown: [], folded: changes }
  // One more line takes no more room than the words that would open it.
  if (changes.length <= MOST_AT_ONCE + 1) return { shown: changes, folded: [] }
  return { shown: changes.slice(0, MOST_AT_ONCE), folded: changes.slice(MOST_AT_ONCE) }
}

export function isNew(changes: readonly Change[]): boolean {
  return changes.length > 1 && changes.every(({ before }) => before === '')
}

/** @example foldedInWords(3, true) // → '3 fields entered' */
export function foldedInWords(count: number, isEntered: boolean): string {
  return isEntered ? `${counted(count, 'field')} entered` : `${counted(count, 'more field')} changed`
}

/** @example pageInWords({ skip: 50, shown: 50, total: 1234 }) // → '51 to 100 of 1,234 changes' */
export function pageInWords({ skip, shown, total }: { skip: number; shown: number; total: number }): string {
  if (shown === 0) return `none of ${counted(total, 'change')}`
  if (shown === total) return counted(total, 'change')
  return `${formatCount(skip + 1)} to ${formatCount(skip + shown)} of ${counted(total, 'change')}`
}

/** Where to look at what was changed; null where no page shows it, or its name is not known any more. */
export function pageOf({ subject, name }: Pick<LogRow, 'subject' | 'name'>): string | null {
  if (name === '') return null
  switch (subject) {
    // What is monitored goes by the tag of its valve.
    case 'valve':
    case 'monitoring':
      return `/valves/${encodeURIComponent(name)}`
    case 'area':
      return `/?area=${encodeURIComponent(name)}`
    case 'crew':
    case 'days off':
      return '/register/crews'
    case 'round':
      return '/rounds'
    case 'plan':
      return '/rounds/plan'
    case 'outage':
      return '/repacks/outages'
    case 'repack plan':
      return '/repacks'
    case 'stock item':
      return '/stores'
    case 'leak rule':
      return '/leaks/rules'
    case 'site':
    case 'person':
    case 'calendar':
      return null
  }
}
