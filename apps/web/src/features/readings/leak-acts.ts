import type { DeferReason, LeakGrade, Treatment } from '@glandkeeper/contract/events'
import type { z } from 'zod'
import { formatDay } from '../../platform/site-time.ts'
import { capital } from '../../ui/sentence.ts'
import type { Fact } from './commands.ts'

/** What was done about a leak beside nuts and packing, or decided about it. Null or empty is not said. */
export interface LeakActs {
  readonly treatment: z.infer<typeof Treatment> | null
  /** After the treatment; nobody may have looked. */
  readonly leakAfter: LeakGrade | null
  readonly deferReason: z.infer<typeof DeferReason> | null
  readonly approvedBy: string
  /** As a date field has it. */
  readonly until: string
}

export const noActs: LeakActs = { treatment: null, leakAfter: null, deferReason: null, approvedBy: '', until: '' }

export function treatedFacts({ treatment, leakAfter }: LeakActs, leakBefore: LeakGrade | null): Fact[] {
  if (treatment === null) return []
  return [{ kind: 'leak.treated', treatment, leakBefore: leakBefore ?? undefined, leakAfter: leakAfter ?? undefined }]
}

export function deferredFacts({ deferReason, approvedBy, until }: LeakActs): Fact[] {
  if (deferReason === null) return []
  return [{ kind: 'repair.deferred', reason: deferReason, approvedBy, until: until === '' ? undefined : until }]
}

/** What is missing before it can be sent, as the person would be asked for it. */
export function missingOfDeferral({ deferReason, approvedBy }: LeakActs): string | null {
  if (deferReason === null) return 'Say why the repair is put off.'
  return approvedBy.trim() === '' ? 'Say who allowed it.' : null
}

/** A repair is put off to a day that comes. `on` is the day it was decided. */
export function oddDeferral({ until }: LeakActs, on: string): string | null {
  if (until === '' || until >= on) return null
  return `It is put off until ${formatDay(until)}, a day that was over already.`
}

export function treatedInWords({ treatment, leakAfter }: LeakActs): string {
  if (treatment === null) return 'Done about a leak'
  return leakAfter === null ? capital(treatment) : `${capital(treatment)}, ${leakAfter} after`
}

/** @example deferredInWords({ ...noActs, deferReason: 'part on order', until: '2026-06-01' }) // → 'repair put off: part on order, until 1 Jun 2026' */
export function deferredInWords({ deferReason, until }: LeakActs): string {
  const day = until === '' ? '' : `, until ${formatDay(until)}`
  return `repair put off${deferReason === null ? '' : `: ${deferReason}`}${day}`
}
