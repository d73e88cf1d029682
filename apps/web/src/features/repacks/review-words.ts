import type { OutageReview, ReviewedRepack } from '@glandkeeper/contract/outages'
import { counted, formatCount } from '../../ui/count.ts'

/** A piece of a bar: so many valves, drawn in their own way. */
export interface BarPiece {
  readonly kind: 'done' | 'not done' | 'extra' | 'leaked' | 'due' | 'lost'
  readonly count: number
  readonly x: number
  readonly width: number
}

/** Pieces one behind the other, to one scale; those of nothing are left out. */
export function barOf(pieces: readonly (readonly [BarPiece['kind'], number])[], pxOfOne: number): BarPiece[] {
  let x = 0
  return pieces.flatMap(([kind, count]) => {
    if (count === 0) return []
    const piece = { kind, count, x, width: count * pxOfOne }
    x += piece.width
    return [piece]
  })
}

/** What a bar shows, without what there is none of. @example piecesInWords([['made', 3], ['lost', 0]]) // → '3 made' */
export function piecesInWords(pieces: readonly (readonly [string, number])[]): string {
  const there = pieces.filter(([, count]) => count > 0)
  return there.length === 0 ? 'none' : there.map(([words, count]) => `${formatCount(count)} ${words}`).join(', ')
}

/** Valves by what became of their follow-up. */
export function followUpsOf(valves: readonly ReviewedRepack[]) {
  const count = (kind: ReviewedRepack['followUp']) => valves.filter(({ followUp }) => followUp === kind).length
  return { made: count('made'), due: count('due'), lost: count('lost') }
}

/** The outage in a few sentences: what was done, what leaked, what was not followed up. */
export function reviewInWords(
  review: Pick<OutageReview, 'planned' | 'done' | 'notDone' | 'extra' | 'leaked' | 'isComplete'>,
): string {
  const { planned, done, notDone, extra, leaked, isComplete } = review
  const all = done + extra
  const sentences = [
    planned === 0
      ? 'No repack was planned for it.'
      : `Of ${counted(planned, 'repack')} planned, ${done === planned ? 'all were made' : `${many(done)} made, ${many(notDone)} not`}.`,
    ...(extra > 0
      ? [`${formatCount(extra)}${planned > 0 ? ' more' : ''} ${extra === 1 ? 'was' : 'were'} made without a plan.`]
      : []),
    ...(all > 0 ? [`${leaked === 0 ? 'None' : formatCount(leaked)} of ${formatCount(all)} leaked within 30 days.`] : []),
    ...(isComplete || all === 0 ? [] : ['The 30 days after the last repack are not over: more may leak yet.']),
  ]
  return sentences.join(' ')
}

const many = (count: number) => `${count === 0 ? 'none' : formatCount(count)} ${count === 1 ? 'was' : 'were'}`

/** What needs a look first: leaked, then follow-up lost, then not done, then the rest. */
export function worstFirst(valves: readonly ReviewedRepack[]): ReviewedRepack[] {
  const rank = ({ leakedAfterDays, followUp, repackedOn }: ReviewedRepack) =>
    leakedAfterDays !== null ? 0 : followUp === 'lost' ? 1 : repackedOn === null ? 2 : 3
  return valves.toSorted((one, other) => rank(one) - rank(other) || one.tag.localeCompare(other.tag))
}
