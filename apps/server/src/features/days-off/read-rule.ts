import { createRequire } from 'node:module'
import type * as Rules from 'rrule'
import { Refusal } from '../../platform/problem.ts'

// Required and not imported: Node finds no names in what this library gives to an import.
const { RRule } = createRequire(import.meta.url)('rrule') as typeof Rules

export interface ReadRule {
  /** Goes through the days of the rule, the earliest first, until it is told to stop by `false`. */
  readonly eachDay: (see: (isoDay: string) => boolean) => void
  /** How often the days come in all, the first time with them; null when they never cease. */
  readonly count: number | null
}

const some = (part: string) => new RegExp(`^${part}(,${part})*$`)
const WEEKDAY = '(MO|TU|WE|TH|FR|SA|SU)'
const SIGNED = String.raw`[+-]?[1-9]\d{0,2}`

const readable: Readonly<Record<string, RegExp>> = {
  FREQ: /^(DAILY|WEEKLY|MONTHLY|YEARLY)$/,
  INTERVAL: /^[1-9]\d{0,3}$/,
  COUNT: /^[1-9]\d{0,3}$/,
  UNTIL: /^\d{4}(0[1-9]|1[0-2])(0[1-9]|[12]\d|3[01])(T\d{6}Z?)?$/,
  WKST: new RegExp(`^${WEEKDAY}$`),
  BYMONTH: some('(1[0-2]|[1-9])'),
  BYMONTHDAY: some(SIGNED),
  BYDAY: some(`(${SIGNED})?${WEEKDAY}`),
  BYSETPOS: some(SIGNED),
  BYWEEKNO: some(SIGNED),
  BYYEARDAY: some(SIGNED),
}

/**
 * What narrows a rule, by how often it comes. Less than RFC 5545 allows for days and weeks: of a day that never comes
 * the library asks every day up to the year 9999, which takes it twelve seconds.
 */
const narrowing: Readonly<Record<string, readonly string[]>> = {
  DAILY: [],
  WEEKLY: ['BYMONTH', 'BYDAY'],
  MONTHLY: ['BYMONTH', 'BYMONTHDAY', 'BYDAY', 'BYSETPOS'],
  YEARLY: ['BYMONTH', 'BYMONTHDAY', 'BYDAY', 'BYSETPOS', 'BYWEEKNO', 'BYYEARDAY'],
}

/** Reads a recurrence rule of RFC 5545 (3.3.10) in whole days: days of UTC, which no time zone can shift. */
export function readRule(rule: string, startsOn: string): ReadRule {
  const parts = partsOf(rule)
  // Counted by the caller, for whom the first days count even where the rule would not give them.
  const { count, ...options } = RRule.parseString([...parts].map((part) => part.join('=')).join(';'))
  const recurring = new RRule({ ...options, dtstart: new Date(`${startsOn}T00:00:00Z`) }, true)
  return {
    eachDay: (see) => void recurring.all((date) => see(date.toISOString().slice(0, 10))),
    count: count ?? null,
  }
}

function partsOf(rule: string): ReadonlyMap<string, string> {
  const refuse = (why: string) => new Refusal('daysoff/rule', `${why} in ${rule}`)
  const parts = new Map<string, string>()
  for (const part of rule
    .toUpperCase()
    .replace(/^RRULE:/, '')
    .split(';')) {
    const [name = '', value = '', ...rest] = part.split('=')
    if (rest.length > 0 || readable[name]?.test(value) !== true) throw refuse(`${part === '' ? 'nothing' : part} is not read`)
    if (parts.has(name)) throw refuse(`${name} stands twice`)
    parts.set(name, value)
  }
  const every = parts.get('FREQ')
  if (every === undefined) throw refuse('FREQ is missing')
  const strange = [...parts.keys()].find((name) => name.startsWith('BY') && narrowing[every]?.includes(name) !== true)
  if (strange !== undefined) throw refuse(`${strange} is not read beside ${every}`)
  if (every === 'WEEKLY' && /\d/.test(parts.get('BYDAY') ?? '')) throw refuse('a week has each day once')
  if (parts.has('COUNT') && parts.has('UNTIL')) throw refuse('COUNT and UNTIL say two ends')
  return parts
}
