import { AreaCode } from '@glandkeeper/contract/areas'
import type { EvidenceScope } from '@glandkeeper/contract/evidence'
import { ValveTag } from '@glandkeeper/contract/valves'
import { z } from 'zod'

/** Which entries are taken out: kept in the address, so that the same choice can be made again next year. */
export interface EntryChoice {
  readonly of: 'all' | 'valve' | 'area'
  /** As typed; empty while nobody has named the valve. */
  readonly tag: string
  readonly area: string
  readonly from: string
  readonly to: string
}

/** A tag or area that is named but empty is one that is still to be chosen. */
export function choiceOf(address: URLSearchParams): EntryChoice {
  const tag = address.get('tag')
  const area = address.get('area')
  return {
    of: tag !== null ? 'valve' : area !== null ? 'area' : 'all',
    tag: (tag ?? '').trim(),
    area: tag === null ? (area ?? '').trim() : '',
    from: dayIn(address.get('from')),
    to: dayIn(address.get('to')),
  }
}

function dayIn(text: string | null): string {
  return z.iso.date().safeParse(text).data ?? ''
}

/**
 * The address of a choice with something changed.
 *
 * @example withChoice(choiceOf(new URLSearchParams('tag=BM-3307')), { to: '2026-03-31' }) // → '?tag=BM-3307&to=2026-03-31'
 */
export function withChoice(choice: EntryChoice, change: Partial<EntryChoice>): string {
  const { of, tag, area, from, to } = { ...choice, ...change }
  const address = new URLSearchParams()
  if (of === 'valve') address.set('tag', tag)
  if (of === 'area') address.set('area', area)
  if (from !== '') address.set('from', from)
  if (to !== '') address.set('to', to)
  return `?${address.toString()}`
}

/** What the server is asked for, or what is still missing in words. */
export type ScopeOrMissing = { readonly scope: EvidenceScope } | { readonly missing: string }

export function scopeOf({ of, tag, area, from, to }: EntryChoice): ScopeOrMissing {
  if (from !== '' && to !== '' && to < from) return { missing: 'The last day comes before the first.' }
  const days = { ...(from !== '' && { from }), ...(to !== '' && { to }) }
  if (of === 'all') return { scope: days }
  if (of === 'area') {
    const code = AreaCode.safeParse(area)
    return code.success ? { scope: { area: code.data, ...days } } : { missing: 'Choose an area.' }
  }
  if (tag === '') return { missing: 'Type the tag of the valve.' }
  const known = ValveTag.safeParse(tag)
  return known.success
    ? { scope: { tag: known.data, ...days } }
    : { missing: 'A tag has letters, digits, spaces and . _ / + - only.' }
}
