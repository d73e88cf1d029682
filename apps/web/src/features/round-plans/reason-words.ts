import type { impossibleReasons, planReasons, PlannedVisit, VisitCause } from '@glandkeeper/contract/round-plans'
import { parseISO } from 'date-fns'
import type { Consequence } from './consequence.ts'
import { counted } from '../../ui/count.ts'
import { hoursInWords, weekNumber, weekOfDay } from './week-words.ts'

type Reason = (typeof planReasons)[number] | (typeof impossibleReasons)[number]

const because: Readonly<Record<Reason, string>> = {
  'in its due week': 'In the week it is due.',
  pinned: 'Pinned to this week by hand.',
  frozen: 'Its round is made.',
  'as in the plan before': 'Where the plan before had it.',
  'area closed in its due week': 'Its area is closed in the week it is due.',
  'no crew hours in its due week': 'The crew has no hours in the week it is due.',
  'nothing new in its due week': 'Nothing new is planned in the week it is due.',
  'area opens once': 'So that the area is opened once for all of them.',
  'due week is full': 'The week it is due has no hours to spare.',
  'no crew': 'There is no crew to walk: add one.',
  'no crew has the skill': 'No crew has the skill its area asks for.',
  'closed all through its window': 'Its area is closed in every week it could be made in.',
  'no crew hours in its window': 'The crew has no hours in any week it could be made in.',
  'its window is over': 'Every week it could be made in is over, or holds what is planned already.',
  'hours run short': 'The hours of every week it could be made in are used up: add hours, or pin it to a week.',
  'pinned week beyond the plan': 'It is pinned to a week this plan does not reach.',
  'pinned week is full': 'The week it is pinned to holds no more.',
}

const called: Readonly<Record<VisitCause, string>> = {
  'after a repack': 'follow-up of a repack',
  'after a nip': 'follow-up of a nip',
  'leak interval': 'look for a leak',
  reserve: 'travel is running out',
  'longest time between looks': 'routine look',
  'never seen': 'nobody has seen it yet',
  overdue: 'overdue',
  'missed on a round': 'missed on a round',
}

/** @example causeInWords('missed on a round', 'too hot') // → 'missed on a round: too hot' */
export const causeInWords = (cause: VisitCause, missed: string | null = null): string =>
  missed === null ? called[cause] : `${called[cause]}: ${missed}`

export const reasonInWords = (reason: string): string => because[reason as Reason] ?? reason

/**
 * Where a visit is against the week it is due, and why.
 *
 * @example whyInWords({ weekOf: '2026-05-25', dueWeekOf: '2026-06-01', reason: 'area opens once' }) // → 'A week before it is due. So that the area is opened once for all of them.'
 */
export function whyInWords({ weekOf, dueWeekOf, reason }: Pick<PlannedVisit, 'weekOf' | 'dueWeekOf' | 'reason'>): string {
  if (weekOf === null) return because[reason]
  const weeks = weekOfDay(dueWeekOf, parseISO(weekOf))
  if (weeks === 0) return because[reason]
  const many = Math.abs(weeks) === 1 ? 'A week' : `${Math.abs(weeks)} weeks`
  // Due before the plan began: the first week there is counts as its due week.
  if (reason === 'in its due week') return `${many} overdue: as soon as can be.`
  return `${many} ${weeks < 0 ? 'before' : 'after'} it is due. ${because[reason]}`
}

/** What moving a block brings about, in a sentence with its figures. */
export function consequenceInWords(
  { visits, joins, leaves, tooEarly, tooLate, isAreaClosed, savesSetUp }: Consequence,
  { area, from, to }: { readonly area: string; readonly from: string; readonly to: string },
): string {
  const [weekFrom, weekTo] = [weekNumber(from, 0), weekNumber(to, 0)]
  const said = [
    `${area}, ${counted(visits, 'visit')}, week ${weekFrom} to ${weekTo}.`,
    `Week ${weekTo} then has ${hoursInWords(joins.load)} of ${hoursInWords(joins.hours)}, week ${weekFrom} ${hoursInWords(leaves.load)}.`,
  ]
  if (joins.load > joins.hours) said.push(`That is ${hoursInWords(joins.load - joins.hours)} over.`)
  if (savesSetUp) said.push('The area is open in that week anyway: one set-up less.')
  if (tooLate > 0)
    said.push(`${counted(tooLate, 'of them comes', 'of them come')} later than ${tooLate === 1 ? 'its' : 'their'} last week.`)
  if (tooEarly > 0)
    said.push(
      `${counted(tooEarly, 'of them comes', 'of them come')} earlier than ${tooEarly === 1 ? 'its' : 'their'} first week.`,
    )
  if (isAreaClosed) said.push('The area is closed in that week.')
  return said.join(' ')
}
