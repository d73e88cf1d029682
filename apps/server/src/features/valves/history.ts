import { FieldEvent, type TimelineEntry } from '@glandkeeper/contract/events'
import type { ReservePoint } from '@glandkeeper/contract/reserve'
import type { ValveHistory } from '@glandkeeper/contract/valves'
import { movesFollower } from '@glandkeeper/engines/reserve/facts'
import { instant } from '@glandkeeper/units/quantity'
import type { EventModel } from '../../generated/sqlite/models.ts'
import { Refusal } from '../../platform/problem.ts'
import { fieldChanges } from '../../platform/register-change.ts'
import type { Read } from '../../platform/store.ts'
import {
  bandsOf,
  correctionFindings,
  entryInWords,
  eventFindings,
  expectedNow,
  findingsInWords,
  forecastBasis,
  glandRecord,
  howFactsStand,
  presentState,
} from '../glands/index.ts'
import { presentValve } from './present.ts'

type EventWithPerson = EventModel & { readonly person: { readonly name: string } }
type Record = ReturnType<typeof glandRecord>

/** Everything known of one valve: what it is, where it stands, how it came there and who said so. */
export async function valveHistory(read: Read, siteId: string, tag: string, now: Date): Promise<ValveHistory> {
  const row = await read.valve.findUnique({ where: { siteId_tag: { siteId, tag } }, include: { area: true, site: true } })
  if (!row) throw new Refusal('valve/unknown', tag)
  const [events, changes] = await Promise.all([
    read.event.findMany({
      where: { siteId, valveId: row.id },
      include: { person: { select: { name: true } } },
      orderBy: [{ takenAt: 'desc' }, { id: 'desc' }],
    }),
    read.registerChange.findMany({
      where: { siteId, subject: 'valve', subjectId: row.id },
      include: { person: { select: { name: true } } },
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
    }),
  ])
  const basis = await forecastBasis(read, siteId, now)
  const record = glandRecord(row, events, basis)
  return {
    valve: presentValve(row),
    state: presentState(record.state, { timeZone: row.site.timeZone, bands: bandsOf(basis.settings) }),
    expects: expectedNow(row.service, record.ahead.lives, basis, now),
    points: pointsOf(record),
    lives: record.history.lives.map(({ from, to, family, rings }) => ({ from: isoOf(from), to: isoOf(to), family, rings })),
    timeline: timelineOf(events, record),
    registerChanges: changes.map(({ at, person, what, before, after }): ValveHistory['registerChanges'][number] => ({
      at: at.toISOString(),
      by: person.name,
      what,
      changes: fieldChanges(before, after),
    })),
  }
}

/** The stair of the reserve: one step for each entry that could have moved the follower. */
function pointsOf({ history }: Record): ReservePoint[] {
  return history.moments.flatMap(({ kind, at, reserve, gapIsInferred }) =>
    movesFollower(kind) ? [{ at: new Date(at).toISOString(), reserve: reserve, isInferred: gapIsInferred }] : [],
  )
}

function timelineOf(events: readonly EventWithPerson[], record: Record): TimelineEntry[] {
  const { history, knownFacts } = record
  const moments = new Map(history.moments.map((moment) => [moment.factId, moment]))
  const stands = howFactsStand(record)
  return events.map((row) => {
    const event = JSON.parse(row.body) as FieldEvent
    const moment = moments.get(row.id)
    return {
      event,
      receivedAt: row.receivedAt.toISOString(),
      by: event.takenBy ?? row.person.name,
      device: row.device,
      position: row.position,
      says: entryInWords(event),
      reserveAfter: moment?.reserve ?? null,
      findings: [
        ...eventFindings(event, row.receivedAt),
        ...correctionFindings(event, knownFacts),
        ...findingsInWords(moment?.findings ?? []),
      ],
      standsAs: stands.get(row.id) ?? 'correction',
    }
  })
}

function isoOf(moment: number | null): string | null {
  return moment === null ? null : new Date(instant(moment)).toISOString()
}
