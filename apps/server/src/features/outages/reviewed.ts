import type { LeakGrade } from '@glandkeeper/contract/events'
import type { OutageReview, ReviewedRepack } from '@glandkeeper/contract/outages'
import { wasAtValve } from '@glandkeeper/engines/reserve/facts'
import { countsAsLeak } from '@glandkeeper/engines/leak/visits'
import { differenceInDays } from 'date-fns/differenceInDays'
import { isBefore } from 'date-fns/isBefore'
import { groupedBy } from '../../platform/grouped-by.ts'
import type { Said } from '../glands/index.ts'

/** A leak so soon after a repack says something of the repack. */
export const DAYS_WATCHED = 30

export interface EntryAfter {
  readonly said: Said
  readonly takenAt: Date
  /** Of the person who entered it; null where they belong to none. */
  readonly crewName: string | null
}

interface Frame {
  readonly begins: Date
  readonly ends: Date
  readonly now: Date
  readonly followUpDays: number
  readonly dayOf: (moment: Date) => string
}

const MILLISECONDS_PER_DAY = 86_400_000

/** What became of one valve: its repack within the outage, the first leak after it, and whether somebody came back. */
export function reviewed(
  entries: readonly EntryAfter[],
  { begins, ends, now, followUpDays, dayOf }: Frame,
): Omit<ReviewedRepack, 'tag' | 'description' | 'areaCode' | 'isPlanned'> {
  const repack = entries.findLast(({ said, takenAt }) => said.kind === 'packing.renewed' && takenAt >= begins && takenAt < ends)
  if (repack?.said.kind !== 'packing.renewed') return NOT_DONE
  const { said, takenAt } = repack
  const after = entries.filter((entry) => entry.takenAt > takenAt)
  const leak = after.find((entry) => hasLeaked(entry.said))
  const days = leak && differenceInDays(leak.takenAt, takenAt)
  const dueAt = new Date(takenAt.getTime() + followUpDays * MILLISECONDS_PER_DAY)
  const wasSeen = after.some((entry) => wasAtValve(entry.said.kind))
  return {
    repackedOn: dayOf(takenAt),
    family: said.family,
    doneBy: doneBy(repack),
    isProved: said.proved ?? null,
    leakedAfterDays: days !== undefined && days < DAYS_WATCHED ? days : null,
    followUp: wasSeen ? 'made' : isBefore(now, new Date(dueAt.getTime() + MILLISECONDS_PER_DAY)) ? 'due' : 'lost',
    followUpOn: dayOf(dueAt),
  }
}

const NOT_DONE = {
  repackedOn: null,
  family: null,
  doneBy: null,
  isProved: null,
  leakedAfterDays: null,
  followUp: null,
  followUpOn: null,
} as const

/** Whom the record names, else the crew of whoever entered it. */
function doneBy({ said, crewName }: EntryAfter): string | null {
  const named = said.kind === 'packing.renewed' ? said.doneBy : undefined
  if (!named) return crewName
  return named.kind === 'contractor' ? `contractor${named.name ? ` ${named.name}` : ''}` : named.name || crewName
}

const isLeak = (grade: LeakGrade | undefined) => grade !== undefined && countsAsLeak(grade)

function hasLeaked(said: Said): boolean {
  switch (said.kind) {
    case 'leak.seen':
    case 'reading.taken':
      return isLeak(said.leak)
    case 'gland.nipped':
    case 'leak.treated':
      return isLeak(said.leakBefore) || isLeak(said.leakAfter)
    case 'packing.renewed':
    case 'ring.added':
    case 'visit.missed':
    case 'repair.deferred':
      return false
  }
}

type Sums = Omit<OutageReview, 'outage' | 'isComplete' | 'valves'>

/** How many of each, over all valves, by crew and by family. */
export function summedUp(valves: readonly ReviewedRepack[]): Sums {
  const done = valves.filter(({ repackedOn }) => repackedOn !== null)
  const planned = valves.filter(({ isPlanned }) => isPlanned)
  const plannedAndDone = planned.filter(({ repackedOn }) => repackedOn !== null).length
  return {
    planned: planned.length,
    done: plannedAndDone,
    notDone: planned.length - plannedAndDone,
    extra: done.length - plannedAndDone,
    leaked: done.filter(({ leakedAfterDays }) => leakedAfterDays !== null).length,
    followUpLost: done.filter(({ followUp }) => followUp === 'lost').length,
    byCrew: grouped(done, (valve) => valve.doneBy ?? 'not said'),
    byFamily: grouped(done, (valve) => valve.family ?? 'not known'),
  }
}

function grouped(done: readonly ReviewedRepack[], nameOf: (valve: ReviewedRepack) => string): Sums['byCrew'] {
  return [...groupedBy(done, nameOf)]
    .map(([name, own]) => ({
      name,
      done: own.length,
      leaked: own.filter(({ leakedAfterDays }) => leakedAfterDays !== null).length,
      followUpLost: own.filter(({ followUp }) => followUp === 'lost').length,
    }))
    .toSorted((one, other) => (one.name < other.name ? -1 : 1))
}
