import { addDays, type Day, days, daysBetween, type Instant, type Millimetre } from '@glandkeeper/units/quantity'
import { type Outcome, refuse } from '../outcome.ts'
import type { Moment, PackingLife } from '../reserve/gland-history.ts'
import { DAYS_PER_MONTH, openWithin } from './leak-exposure.ts'
import type { Leak } from './leaks.ts'

/** Months before the leak that are held against the life before them. */
const MONTHS_BEFORE = 3
/** Gaps between nips that can be halved with two in each half. */
const FEWEST_GAPS = 4

export interface BeforeTheLeak {
  /** Between the nips of this packing before the leak, in the order they came. */
  readonly nipGaps: readonly Day[]
  /** Median gap of the first half and of the last, a middle one left out; below 1 nips came closer. Null under four gaps. */
  readonly nipsCloser: { readonly first: Day; readonly last: Day; readonly ratio: number } | null
  /** Travel used in a month without a leak, mm; null where less than such a month is known. */
  readonly travelPerMonth: { readonly threeMonthsBefore: number | null; readonly lifeBefore: number | null }
  /** How old the packing was. */
  readonly packingAge: Day | null
  /** How old the packing before it was when it came out. */
  readonly lifeBeforeLasted: Day | null
  readonly family: string | null
  readonly familyBefore: string | null
  /** Travel left when it opened, before anything was done. */
  readonly travelLeft: Millimetre | null
  readonly earlierLeaks: number
  /** Stems felt stiff in the three months before, or at that visit. */
  readonly stiffStems: readonly { readonly factId: string; readonly at: Instant; readonly stem: string }[]
}

/**
 * What changed before a leak opened: figures of the packing life it opened in, and of the life before.
 *
 *     travel per month = travel used / months without a leak        in the three months before, and in the life before those
 *
 * Travel is used where the reserve falls from one entry to the next; what a top-up ring gives back is none. Holds while the
 * follower moves only when somebody turns a nut. Entries that shared the leak's time but stand before it count as before.
 *
 * @source SRC-795 what changed before a leak · SRC-792 days of a month (docs/sources.md)
 * @param input.moments and lives of glandHistory, leaks of leaksOf, all of the same facts
 * @returns nulls where too little is known; or `leak/unknown` for an id that is not there
 * @example beforeTheLeak({ moments: [], leaks: [], lives: [], leakId: 'a' }).ok // → false
 */
export function beforeTheLeak(input: {
  readonly moments: readonly Moment[]
  readonly leaks: readonly Leak[]
  readonly lives: readonly PackingLife[]
  readonly leakId: string
}): Outcome<BeforeTheLeak> {
  const { moments, leaks, lives, leakId } = input
  const place = leaks.findIndex(({ id }) => id === leakId)
  const leak = leaks[place]
  const opening = moments.findIndex(({ factId }) => factId === leakId)
  if (!leak || opening < 0) return refuse('leak/unknown', 'leakId', `no leak was opened by the entry ${leakId}`)
  const earlier = leaks.slice(0, place)
  const packed = moments.slice(0, opening).findLastIndex(({ kind }) => kind === 'packing.renewed')
  // A nip for which the leak was looked at first came after it; a reading tells what there was.
  const wasTouched = leak.attempts.some(({ factId }) => factId === leakId)
  const before = moments.slice(Math.max(packed, 0), wasTouched ? opening : opening + 1)
  const gaps = nipGapsOf(before)
  const lifeAt = lives.findLastIndex(({ from }) => from === leak.packedAt)
  const lastLife = lifeAt > 0 ? lives[lifeAt - 1] : undefined
  return {
    ok: true,
    nipGaps: gaps,
    nipsCloser: closer(gaps),
    travelPerMonth: travelPerMonth(before, earlier, leak.openedAt),
    packingAge: leak.packedAt === null ? null : daysBetween(leak.packedAt, leak.openedAt),
    lifeBeforeLasted: lengthOf(lastLife),
    family: leak.family,
    familyBefore: lastLife?.family ?? null,
    travelLeft: before.at(-1)?.reserve ?? null,
    earlierLeaks: earlier.filter(({ packedAt }) => packedAt === leak.packedAt).length,
    stiffStems: stiffStems(moments.slice(Math.max(packed, 0), opening + 1), leak.openedAt),
  }
}

function lengthOf(life: PackingLife | undefined): Day | null {
  return !life || life.from === null || life.to === null ? null : daysBetween(life.from, life.to)
}

function nipGapsOf(moments: readonly Moment[]): Day[] {
  const nips = moments.filter(isNip).map(({ at }) => at)
  return nips.slice(1).map((at, index) => daysBetween(nips[index] ?? at, at))
}

function isNip({ kind, findings }: Moment): boolean {
  if (kind !== 'gland.nipped') return false
  return !findings.some((finding) => finding.code === 'reserve/slackened' && finding.turnsLeft + finding.turnsRight <= 0)
}

function closer(gaps: readonly Day[]): BeforeTheLeak['nipsCloser'] {
  if (gaps.length < FEWEST_GAPS) return null
  const half = Math.floor(gaps.length / 2)
  const first = medianOf(gaps.slice(0, half))
  const last = medianOf(gaps.slice(-half))
  return first > 0 ? { first, last, ratio: last / first } : null
}

function medianOf(gaps: readonly Day[]): Day {
  const sorted = gaps.toSorted((one, other) => one - other)
  const upper = sorted[sorted.length >> 1] ?? days(0)
  const lower = sorted[(sorted.length - 1) >> 1] ?? upper
  return days((lower + upper) / 2)
}

function travelPerMonth(before: readonly Moment[], earlier: readonly Leak[], openedAt: Instant): BeforeTheLeak['travelPerMonth'] {
  const known = before.find(({ reserve }) => reserve !== null)
  if (!known) return { threeMonthsBefore: null, lifeBefore: null }
  const spells = earlier.flatMap((leak) => leak.spells)
  const threeMonths = addDays(openedAt, days(-MONTHS_BEFORE * DAYS_PER_MONTH))
  const since = threeMonths > known.at ? threeMonths : known.at
  const rate = (used: number, from: Instant, to: Instant) => {
    const months = (daysBetween(from, to) - openWithin(spells, from, to)) / DAYS_PER_MONTH
    return months < 1 ? null : used / months
  }
  const falls = fallsOfReserve(before)
  const usedIn = (counts: (at: Instant) => boolean) => falls.reduce((sum, { at, travel }) => (counts(at) ? sum + travel : sum), 0)
  return {
    threeMonthsBefore: rate(
      usedIn((at) => at > threeMonths),
      since,
      openedAt,
    ),
    lifeBefore: rate(
      usedIn((at) => at <= threeMonths),
      known.at,
      since,
    ),
  }
}

/** From each entry to the next, below 0 where it rose: readings scatter both ways. New packing begins anew. */
function fallsOfReserve(moments: readonly Moment[]): { at: Instant; travel: number }[] {
  const falls: { at: Instant; travel: number }[] = []
  let last: Millimetre | null = null
  for (const { kind, at, reserve } of moments) {
    const isPacking = kind === 'packing.renewed' || kind === 'ring.added'
    if (!isPacking && last !== null && reserve !== null) falls.push({ at, travel: last - reserve })
    last = isPacking ? reserve : (reserve ?? last)
  }
  return falls
}

function stiffStems(moments: readonly Moment[], openedAt: Instant): BeforeTheLeak['stiffStems'] {
  return moments
    .filter(({ at }) => daysBetween(at, openedAt) <= MONTHS_BEFORE * DAYS_PER_MONTH)
    .flatMap(({ factId, at, findings }) =>
      findings.flatMap((finding) => (finding.code === 'reserve/stem-stiff' ? [{ factId, at, stem: finding.stem }] : [])),
    )
}
