import type { changeRound, RoundInput } from '@glandkeeper/contract/rounds'
import type { BodyOf } from '@glandkeeper/contract/endpoint'
import type { z } from 'zod'
import type { SignedIn } from '../../platform/auth.ts'
import { newId } from '../../platform/ids.ts'
import { Refusal } from '../../platform/problem.ts'
import { noteChange } from '../../platform/register-change.ts'
import type { Write } from '../../platform/store.ts'

type By = Pick<SignedIn, 'siteId' | 'personId'>

export interface NewRound extends Pick<z.output<typeof RoundInput>, 'name' | 'walkOn' | 'fitterId'> {
  readonly stops: readonly { readonly valveId: string; readonly minutes: number | null }[]
  readonly metres: number | null
  readonly levels: number | null
  readonly minutes: number | null
  /** Of the plan it was made from; null for a round made by hand. */
  readonly ofPlan: { readonly weekOf: string; readonly areaId: string; readonly crewId: string } | null
}

/** A round is no longer than what a fitter can walk in a few days. */
export const MOST_STOPS = 200

export async function writeRound(write: Write, by: By, round: NewRound, now: Date): Promise<string> {
  const { stops, ofPlan, ...fields } = round
  const fitter = await nameOfFitter(write, by.siteId, round.fitterId)
  if (stops.length > MOST_STOPS) throw new Refusal('round/too-long')
  const id = newId()
  await write.round.create({
    data: { id, siteId: by.siteId, ...fields, ...ofPlan, madeById: by.personId, createdAt: now },
  })
  await write.roundStop.createMany({
    data: stops.map(({ valveId, minutes }, index) => ({ roundId: id, position: index + 1, valveId, minutes })),
  })
  const after = { name: round.name, walkOn: round.walkOn, fitter, stops: stops.length }
  await noteChange(write, by, { subject: 'round', subjectId: id, what: 'round made', before: {}, after }, now)
  return id
}

/** Another day or fitter. What is closed stays as it is. */
export async function changeRoundOf(
  write: Write,
  by: By,
  roundId: string,
  { walkOn, fitterId }: BodyOf<typeof changeRound>,
  now: Date,
): Promise<void> {
  const fitter = await nameOfFitter(write, by.siteId, fitterId)
  const include = { fitter: { select: { name: true } } }
  const round = await write.round.findFirst({ where: { id: roundId, siteId: by.siteId, closedAt: null }, include })
  if (!round) throw new Refusal('round/unknown', roundId)
  await write.round.update({ where: { id: roundId }, data: { walkOn, fitterId } })
  const before = { walkOn: round.walkOn, fitter: round.fitter?.name ?? null }
  const note = { subject: 'round', subjectId: roundId, what: 'round changed', before, after: { walkOn, fitter } } as const
  await noteChange(write, by, note, now)
}

/** Puts a round away. @returns stops that nobody was at, or that could not be done */
export async function closeRoundOf(
  write: Write,
  by: By,
  round: { readonly roundId: string; readonly stops: readonly { readonly visit: { readonly missed: string | null } | null }[] },
  now: Date,
): Promise<number> {
  const { count } = await write.round.updateMany({
    where: { id: round.roundId, siteId: by.siteId, closedAt: null },
    data: { closedAt: now, closedById: by.personId },
  })
  if (count === 0) throw new Refusal('round/unknown', round.roundId)
  const leftOut = round.stops.filter(({ visit }) => visit === null || visit.missed !== null).length
  const after = { closed: 'yes', leftOut }
  await noteChange(write, by, { subject: 'round', subjectId: round.roundId, what: 'round closed', before: {}, after }, now)
  return leftOut
}

/** @throws person/unknown for a stranger, or who has left */
async function nameOfFitter(write: Write, siteId: string, fitterId: string | null): Promise<string | null> {
  if (fitterId === null) return null
  const fitter = await write.person.findFirst({ where: { id: fitterId, siteId, retiredAt: null } })
  if (!fitter) throw new Refusal('person/unknown', fitterId)
  return fitter.name
}
