import type { FieldEvent, Outcome } from '@glandkeeper/contract/events'
import type { SignedIn } from '../../platform/auth.ts'
import { canonicalJson, type ChainedEvent, hashOf } from '../../platform/chain.ts'
import { asProblem, Refusal } from '../../platform/problem.ts'
import type { ForecastMadeModel as ForecastMadeRow } from '../../generated/sqlite/models.ts'
import type { Write } from '../../platform/store.ts'
import {
  correctionFindings,
  eventFindings,
  findingsInWords,
  forecastBasis,
  forecastMade,
  rebuildState,
  surpriseFindings,
} from '../glands/index.ts'
import { useStockOfEvents } from '../stock/index.ts'

/**
 * Appends entries to the site's chain and brings the state of their valves and the store up to date, in the caller's transaction.
 * With `keepsForecasts` what is forecast now is kept, to be judged later; a file of old entries says nothing to anybody now.
 * An entry known already, word for word, is `already`; the same id with other words is refused.
 */
export async function appendEvents(
  write: Write,
  by: Pick<SignedIn, 'siteId' | 'personId'>,
  events: readonly FieldEvent[],
  receivedAt: Date,
  options: { readonly keepsForecasts: boolean },
): Promise<Outcome[]> {
  const site = await write.site.findUniqueOrThrow({ where: { id: by.siteId } })
  const known = new Map(
    (
      await write.event.findMany({
        where: { id: { in: events.map((event) => event.id) } },
        select: { id: true, body: true, position: true, siteId: true },
      })
    ).map((row) => [row.id, row]),
  )
  const valves = new Set(
    (
      await write.valve.findMany({
        where: { siteId: by.siteId, id: { in: [...new Set(events.map((event) => event.valveId))] } },
        select: { id: true },
      })
    ).map((valve) => valve.id),
  )

  let head = { hash: site.chainHead, position: site.chainLength }
  const rows: (ChainedEvent & { hash: string })[] = []
  const accepted: FieldEvent[] = []
  const outcomes = events.map((event): Outcome => {
    const body = canonicalJson(event)
    const before = known.get(event.id)
    if (before) {
      if (before.body !== body || before.siteId !== by.siteId) return refused(event.id, new Refusal('event/id-reused', event.id))
      return { id: event.id, outcome: 'already', position: before.position }
    }
    if (!valves.has(event.valveId)) return refused(event.id, new Refusal('valve/unknown', event.valveId))
    const row = linkOf(head, by, event, body, receivedAt)
    rows.push(row)
    accepted.push(event)
    known.set(row.id, row)
    head = { hash: row.hash, position: row.position }
    return { id: event.id, outcome: 'accepted', position: row.position, findings: eventFindings(event, receivedAt) }
  })
  if (rows.length === 0) return outcomes

  await write.insertRows(
    'event',
    rows.map((row) => ({ ...row })),
  )
  await write.site.update({ where: { id: by.siteId }, data: { chainHead: head.hash, chainLength: head.position } })
  const stoodOut = await rebuildStatesOf(write, by.siteId, rows, options.keepsForecasts ? receivedAt : null)
  const ofStore = await useStockOfEvents(write, by, accepted, receivedAt)
  return outcomes.map((outcome) =>
    outcome.outcome === 'accepted'
      ? { ...outcome, findings: [...outcome.findings, ...(stoodOut.get(outcome.id) ?? []), ...(ofStore.get(outcome.id) ?? [])] }
      : outcome,
  )
}

function linkOf(
  head: { hash: string; position: number },
  by: Pick<SignedIn, 'siteId' | 'personId'>,
  event: FieldEvent,
  body: string,
  receivedAt: Date,
): ChainedEvent & { hash: string } {
  const link: ChainedEvent = {
    id: event.id,
    siteId: by.siteId,
    position: head.position + 1,
    valveId: event.valveId,
    kind: event.kind,
    version: event.version,
    takenAt: new Date(event.takenAt),
    receivedAt,
    personId: by.personId,
    device: event.device,
    body,
  }
  return { ...link, hash: hashOf(head.hash, link) }
}

/** What stood out at each new entry, once its valve's history was read with it. */
async function rebuildStatesOf(write: Write, siteId: string, rows: readonly ChainedEvent[], madeAt: Date | null) {
  const stoodOut = new Map<string, ReturnType<typeof findingsInWords>>()
  const basis = await forecastBasis(write, siteId, rows[0]?.receivedAt ?? new Date(0))
  const said: ForecastMadeRow[] = []
  for (const valveId of new Set(rows.map((row) => row.valveId))) {
    const record = await rebuildState(write, siteId, valveId, basis)
    for (const moment of record.history.moments) stoodOut.set(moment.factId, findingsInWords(moment.findings))
    const own = rows.filter((row) => row.valveId === valveId)
    for (const row of own) stoodOut.set(row.id, [...(stoodOut.get(row.id) ?? []), ...surpriseFindings(record, row.id, basis)])
    const made = madeAt && forecastMade(record, own.at(-1)?.id ?? '', madeAt)
    if (made) said.push(made)
    for (const row of own.filter(({ kind }) => kind === 'fact.corrected'))
      stoodOut.set(row.id, correctionFindings(JSON.parse(row.body) as FieldEvent, record.knownFacts))
  }
  await write.insertRows(
    'forecast_made',
    said.map((row) => ({ ...row })),
  )
  return stoodOut
}

export function refused(id: string, refusal: Refusal): Outcome {
  return { id, outcome: 'refused', problem: asProblem(refusal) }
}
