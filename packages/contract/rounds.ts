import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { eventKinds, MissedReason } from './events.ts'
import { PersonId } from './people.ts'
import { count } from './quantity.ts'
import { everybody, registerKeepers } from './roles.ts'
import { text } from './text.ts'
import { ValveTag } from './valves.ts'

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
})
export type RoundStop = z.infer<typeof RoundStop>

/** Valves to walk to on a day, in walking order. */
export const Round = z.object({
  roundId: RoundId,
  name: z.string(),
  walkOn: z.iso.date(),
  fitterId: PersonId.nullable(),
  fitterName: z.string().nullable(),
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

/** Takes a round off the phones. Entries made on it stay what they are. */
export const closeRound = endpoint({
  method: 'POST',
  path: '/api/rounds/:roundId/close',
  who: registerKeepers,
  params: z.strictObject({ roundId: RoundId }),
  ok: z.object({ closed: z.literal(true) }),
  status: 200,
})
