import { FieldEvent, type TimelineEntry } from '@glandkeeper/contract/events'

type Correction = Extract<FieldEvent, { kind: 'fact.corrected' }>
type Replacement = NonNullable<Correction['replacement']>
/** What happened, whether it was entered so or put right later. */
type StandingFact = Exclude<FieldEvent, Correction> | Replacement

export interface TimelineRow {
  readonly entry: TimelineEntry
  /** What was later said about this entry; the last one holds. */
  readonly corrections: readonly TimelineEntry[]
}

const oldestFirst = (a: TimelineEntry, b: TimelineEntry) =>
  Date.parse(a.event.takenAt) - Date.parse(b.event.takenAt) || (a.event.id < b.event.id ? -1 : 1)

/** Newest first, each correction beside the entry it corrects. One whose entry has not arrived stands alone. */
export function timelineRows(timeline: readonly TimelineEntry[]): TimelineRow[] {
  const known = new Set(timeline.map(({ event }) => event.id))
  const corrections = new Map<string, TimelineEntry[]>()
  const rows: TimelineEntry[] = []
  for (const entry of timeline) {
    const corrected = entry.event['corrects']
    if (typeof corrected === 'string' && known.has(corrected))
      corrections.set(corrected, [...(corrections.get(corrected) ?? []), entry])
    else rows.push(entry)
  }
  return rows
    .toSorted((a, b) => oldestFirst(b, a))
    .map((entry) => ({ entry, corrections: (corrections.get(entry.event.id) ?? []).toSorted(oldestFirst) }))
}

/** What is held true today, in order of time: entries as entered, or what their last correction put in their place. */
export function standingFacts(timeline: readonly TimelineEntry[]): StandingFact[] {
  return timelineRows(timeline)
    .toReversed()
    .flatMap(factOf)
    .toSorted((a, b) => Date.parse(a.takenAt) - Date.parse(b.takenAt))
}

function factOf({ entry, corrections }: TimelineRow): StandingFact[] {
  const parsed = FieldEvent.safeParse((corrections.at(-1) ?? entry).event)
  if (!parsed.success) return []
  if (parsed.data.kind !== 'fact.corrected') return [parsed.data]
  return corrections.length === 0 || parsed.data.replacement === null ? [] : [parsed.data.replacement]
}
