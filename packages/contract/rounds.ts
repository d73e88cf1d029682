import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { eventKinds, MissedReason } from './events.ts'
import { PersonId } from './people.ts'
import { count, quantity } from './quantity.ts'
import { everybody, registerKeepers } from './roles.ts'
import { text } from './text.ts'
import { ValveTag } from './valves.ts'
import { CrewId, WeekOf } from './weeks.ts'

const RoundId = z.uuid()
const stopPosition = count('Stop', 1, 200)

/** What became of a stop: the last entry made at its valve since the round was made. */
const Visit = z.object({
  at: z.iso.datetime(),
  kind: z.enum(eventKinds),
  /** Why it could not be done; null for every other entry. */
  missed: MissedReason.nullable(),
})

export const RoundStop = z.object({
  position: stopPosition,
  valveId: z.uuid(),
  tag: ValveTag,
  areaCode: AreaCode,
  areaName: z.string(),
  level: count('Level', -20, 60),
  visit: Visit.nullable(),
  /** Put on the round after it was made. */
  isAdded: z.boolean(),
})
export type RoundStop = z.infer<typeof RoundStop>

/** Open: stops are left to visit. Walked: each was visited, or could not be. Closed: a planner has put it away. */
export const RoundState = z.enum(['open', 'walked', 'closed'])
export type RoundState = z.infer<typeof RoundState>

/** Valves to walk to on a day, in walking order. */
export const Round = z.object({
  roundId: RoundId,
  name: z.string(),
  walkOn: z.iso.date(),
  fitterId: PersonId.nullable(),
  fitterName: z.string().nullable(),
  state: RoundState,
  /** Monday of the week of the plan it was made from; null for one made by hand. */
  weekOf: WeekOf.nullable(),
  areaCode: AreaCode.nullable(),
  crewId: CrewId.nullable(),
  crewName: z.string().nullable(),
  /** What it takes, with set-up and the way; metres and levels where places have been measured. */
  minutes: quantity({ label: 'Minutes', unit: 'min', min: 0, max: 100_000, step: 1 }).nullable(),
  metres: quantity({ label: 'On foot', unit: 'm', min: 0, max: 1e6, step: 1 }).nullable(),
  levels: count('Levels climbed', 0, 10_000).nullable(),
  stops: z.array(RoundStop),
})
export type Round = z.infer<typeof Round>

/** Rounds that are not closed, the earliest day first. */
export const listRounds = endpoint({
  method: 'GET',
  path: '/api/rounds',
  who: everybody,
  ok: z.object({ rounds: z.array(Round) }),
  status: 200,
})

/** Makes a round of the valves of some areas whose next look is due by a day, in walking order. */
export const RoundInput = z.strictObject({
  name: text(80, 1),
  walkOn: z.iso.date(),
  /** Null: whoever has time; it is on every phone. */
  fitterId: PersonId.nullable(),
  areaCodes: z.array(AreaCode).min(1).max(50),
  /** Null takes every valve of the areas. */
  dueBy: z.iso.date().nullable(),
})

export const makeRound = endpoint({
  method: 'POST',
  path: '/api/rounds',
  who: registerKeepers,
  body: RoundInput,
  ok: Round,
  status: 201,
})

const byRound = z.strictObject({ roundId: RoundId })

/** Makes rounds of the visits that a plan has for an area and crew in a week: one for each day given, in walking order. */
export const makeRoundsOfPlan = endpoint({
  method: 'POST',
  path: '/api/rounds/of-plan',
  who: registerKeepers,
  body: z.strictObject({
    weekOf: WeekOf,
    areaCode: AreaCode,
    crewId: CrewId,
    days: z
      .array(z.strictObject({ walkOn: z.iso.date(), fitterId: PersonId.nullable() }))
      .min(1)
      .max(7),
  }),
  ok: z.object({ rounds: z.array(Round) }),
  status: 201,
})

/** Another day, or another fitter. */
export const changeRound = endpoint({
  method: 'PUT',
  path: '/api/rounds/:roundId',
  who: registerKeepers,
  params: byRound,
  body: z.strictObject({ walkOn: z.iso.date(), fitterId: PersonId.nullable() }),
  ok: Round,
  status: 200,
})

/** Puts a valve on a round that is made, where it lies best on the way. Fitters may: they see what a plan does not. */
export const addStop = endpoint({
  method: 'POST',
  path: '/api/rounds/:roundId/stops',
  who: everybody,
  params: byRound,
  body: z.strictObject({ tag: ValveTag }),
  ok: Round,
  status: 201,
})

/** Takes a round off the phones. Entries made on it stay what they are; what was left out comes back into the plan. */
export const closeRound = endpoint({
  method: 'POST',
  path: '/api/rounds/:roundId/close',
  who: registerKeepers,
  params: byRound,
  ok: z.object({ closed: z.literal(true), leftOut: count('Left out', 0, 200) }),
  status: 200,
})

/** What to carry on a round: spanners, and cord for likely repacks. */
export const showCarry = endpoint({
  method: 'GET',
  path: '/api/rounds/:roundId/carry',
  who: everybody,
  params: byRound,
  ok: z.object({ lines: z.array(z.object({ name: z.string(), says: z.string() })) }),
  status: 200,
})

/** The round on paper: what to carry, and a row for each stop with room to write in by hand. */
export const printRound = endpoint({
  method: 'GET',
  path: '/api/rounds/:roundId/sheet',
  who: everybody,
  params: byRound,
  ok: z.instanceof(Uint8Array),
  okKind: 'pdf',
  status: 200,
})
