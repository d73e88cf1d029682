import type { FieldEvent } from '@glandkeeper/contract/events'
import type { ValveCard } from '@glandkeeper/contract/pocket'
import { formatMillimetres, formatTurns } from '@glandkeeper/units/format'
import { capital } from '../../ui/sentence.ts'
import { unusualFigures } from './commands.ts'
import { type Draft, isRead, isTurned, turnedOf } from './draft.ts'
import { farOffExpected } from './far-off.ts'
import { deferredInWords, oddDeferral, treatedInWords } from './leak-acts.ts'
import { isSpent, leavesAfter } from './leaves.ts'
import { oddReading } from './sighting.ts'

/** Words on the main button: the act, as it will be saved. */
export function actInWords(draft: Draft): string {
  switch (draft.kind) {
    case 'turns, gap, leak':
      return isTurned(draft) ? `${turnsInWords(draft)}, ${draft.leak}` : `${isRead(draft) ? 'Gap' : 'Looked'}, ${draft.leak}`
    case 'leak seen':
      return draft.leak === 'dry' ? 'No leak seen' : `Leak seen, ${draft.leak}`
    case 'could not do it':
      return 'Could not do it'
    case 'repacked':
      return 'Repacked'
    case 'ring added':
      return draft.ringsAdded === 1 ? 'One ring added' : `${draft.ringsAdded ?? 'No'} rings added`
    case 'something else done about a leak':
      return treatedInWords(draft)
    case 'put the repair off':
      return 'Put the repair off'
  }
}

function turnsInWords(draft: Draft): string {
  if (draft.turns === 'quarter') return 'Quarter turn'
  if (draft.turns === 'half') return 'Half turn'
  if (draft.turns === 'one') return 'One turn'
  const { left, right } = turnedOf(draft)
  return capital(left === right ? formatTurns(left) : `${formatTurns(left)} left, ${formatTurns(right)} right`)
}

/** @example savedInWords(halfTurn, history) // → 'half a turn, 0.875 mm less' */
export function savedInWords(draft: Draft, history: ValveCard): string {
  if (draft.kind === 'put the repair off') return deferredInWords(draft)
  if (draft.kind !== 'turns, gap, leak') return uncapital(actInWords(draft))
  const gaps = [
    draft.gapLeft !== null && `${draft.gapLeft.toFixed(1)} left`,
    draft.gapRight !== null && `${draft.gapRight.toFixed(1)} right`,
  ]
  const read = isRead(draft) ? `gap ${gaps.filter((side) => side !== false).join(', ')}` : null
  if (!isTurned(draft)) return read ?? `looked at, ${draft.leak}`
  const { left, right } = turnedOf(draft)
  const after = leavesAfter(history, { left, right })
  const nip = left === right ? formatTurns(left) : `${formatTurns(left)} left, ${formatTurns(right)} right`
  return [nip, after && travelInWords(after.travelLeft, after.travelRight), read].filter((part) => part !== null).join(', ')
}

function travelInWords(left: number, right: number): string {
  const exact = (travel: number) => `${formatMillimetres(Math.abs(travel), 3)} ${travel < 0 ? 'more' : 'less'}`
  return left === right ? exact(left) : `${exact(left)} left, ${exact(right)} right`
}

/** What to ask before sending: figures outside their usual range, and turns that the record has no travel for. */
export function questionsBefore(draft: Draft, entries: readonly FieldEvent[], history: ValveCard): string[] {
  return [
    ...unusualInWords(entries),
    ...(isTurned(draft) ? withoutTravel(draft, history) : []),
    ...farOffExpected(draft, history),
    ...oddOfLeak(draft, entries),
  ]
}

function oddOfLeak(draft: Draft, entries: readonly FieldEvent[]): string[] {
  const decidedOn = entries.find(({ kind }) => kind === 'repair.deferred')?.takenAt.slice(0, 10)
  const isLook = entries.some(({ kind }) => kind === 'leak.seen')
  const asked = [isLook ? oddReading(draft) : null, decidedOn === undefined ? null : oddDeferral(draft, decidedOn)]
  return asked.filter((question) => question !== null)
}

/** Figures that are possible but outside their usual range, each with that range. */
export function unusualInWords(entries: readonly FieldEvent[]): string[] {
  return entries.flatMap(unusualFigures).map(({ field, meta, value }) => {
    const [low, high] = meta.usual ?? [meta.min, meta.max]
    const side = /(Left|Right)$/.exec(field)?.[0].toLowerCase()
    return `${[meta.label, side, value, meta.unit].filter(Boolean).join(' ')} is outside the usual ${low} to ${high}.`
  })
}

function withoutTravel(draft: Draft, history: ValveCard): string[] {
  const { left, right } = turnedOf(draft)
  if (left <= 0 && right <= 0) return []
  if (isSpent(history.state)) return ['By the record no travel is left.']
  const reserve = leavesAfter(history, { left, right })?.reserve ?? null
  return reserve !== null && reserve < 0
    ? [`By the record this is ${formatMillimetres(Math.abs(reserve))} more than is left.`]
    : []
}

const uncapital = (words: string) => words.charAt(0).toLowerCase() + words.slice(1)
