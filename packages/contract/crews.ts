import { z } from 'zod'
import { AreaCode } from './areas.ts'
import { endpoint } from './endpoint.ts'
import { PersonId } from './people.ts'
import { count, quantity } from './quantity.ts'
import { everybody, registerKeepers } from './roles.ts'
import { text } from './text.ts'
import { CrewId } from './weeks.ts'

export const hoursPerWeek = quantity({
  label: 'Hours for walking in a week',
  unit: 'h',
  min: 0,
  max: 2000,
  step: 0.5,
  usual: [2, 200],
})
const Skill = text(40, 1)

const crewFields = { name: text(60, 1), hoursPerWeek, skills: z.array(Skill).max(20) }

export const CrewInput = z.strictObject({ ...crewFields, personIds: z.array(PersonId).max(200) })

/** People who walk rounds together, with the hours they have for it in a week. */
export const Crew = z.object({
  crewId: CrewId,
  ...crewFields,
  people: z.array(z.object({ personId: PersonId, name: z.string() })),
})
export type Crew = z.infer<typeof Crew>

export const listCrews = endpoint({
  method: 'GET',
  path: '/api/crews',
  who: everybody,
  ok: z.object({ crews: z.array(Crew) }),
  status: 200,
})

export const addCrew = endpoint({
  method: 'POST',
  path: '/api/crews',
  who: registerKeepers,
  body: CrewInput,
  ok: Crew,
  status: 201,
})

const byCrew = z.strictObject({ crewId: CrewId })

export const changeCrew = endpoint({
  method: 'PUT',
  path: '/api/crews/:crewId',
  who: registerKeepers,
  params: byCrew,
  body: CrewInput,
  ok: Crew,
  status: 200,
})

/** A retired crew is planned no more; its rounds stay what they are. */
export const retireCrew = endpoint({
  method: 'POST',
  path: '/api/crews/:crewId/retire',
  who: registerKeepers,
  params: byCrew,
  ok: z.object({ retired: z.literal(true) }),
  status: 200,
})

const daysOffFields = {
  /** Whose days off: of the crew, of the area, or of the whole site when neither is named. */
  crewId: CrewId.nullable(),
  areaCode: AreaCode.nullable(),
  reason: text(80, 1),
  startsOn: z.iso.date(),
  endsOn: z.iso.date(),
  /** A recurrence rule of RFC 5545, such as FREQ=YEARLY; null when the days do not come back. */
  repeats: z.string().trim().min(1).max(200).nullable(),
  /** Share of a crew's hours that is lost. */
  share: quantity({ label: 'Share of the hours lost', unit: 'ratio', min: 0.01, max: 1, step: 0.01 }),
}

export const DaysOffInput = z
  .strictObject(daysOffFields)
  .refine(({ startsOn, endsOn }) => startsOn <= endsOn, { path: ['endsOn'], error: 'The last day is before the first' })
  .refine(({ crewId, areaCode }) => crewId === null || areaCode === null, {
    path: ['areaCode'],
    error: 'Days off are those of a crew or of an area, not of both',
  })

export const DaysOff = z.object({ daysOffId: z.uuid(), ...daysOffFields })
export type DaysOff = z.infer<typeof DaysOff>

export const listDaysOff = endpoint({
  method: 'GET',
  path: '/api/days-off',
  who: everybody,
  ok: z.object({ daysOff: z.array(DaysOff) }),
  status: 200,
})

export const addDaysOff = endpoint({
  method: 'POST',
  path: '/api/days-off',
  who: registerKeepers,
  body: DaysOffInput,
  ok: DaysOff,
  status: 201,
})

export const removeDaysOff = endpoint({
  method: 'DELETE',
  path: '/api/days-off/:daysOffId',
  who: registerKeepers,
  params: z.strictObject({ daysOffId: z.uuid() }),
  ok: z.object({ removed: z.literal(true) }),
  status: 200,
})

const metres = (label: string) => quantity({ label, unit: 'm', min: -10_000, max: 10_000, step: 0.1 })
const Place = z.strictObject({ east: metres('Metres east'), north: metres('Metres north'), level: count('Level', -20, 60) })
const Stairs = z
  .strictObject({
    east: metres('Metres east'),
    north: metres('Metres north'),
    lowestLevel: count('Lowest level', -20, 60),
    highestLevel: count('Highest level', -20, 60),
  })
  .refine(({ lowestLevel, highestLevel }) => lowestLevel <= highestLevel, {
    path: ['highestLevel'],
    error: 'The highest level is below the lowest',
  })

/** Where a walk through an area begins, and how it gets from level to level. */
export const WalkPlan = z.strictObject({ wayIn: Place.nullable(), stairs: z.array(Stairs).max(50) })
export type WalkPlan = z.infer<typeof WalkPlan>

const areaWalkFields = {
  /** Null: as the site's setting says. */
  setUpMinutes: quantity({ label: 'Minutes to set up', unit: 'min', min: 0, max: 960, step: 1 }).nullable(),
  skill: Skill.nullable(),
  /** Null leaves the choice to the plan. */
  crewId: CrewId.nullable(),
  walkPlan: WalkPlan.nullable(),
}

/** How an area is walked. */
export const AreaWalk = z.object({ areaCode: AreaCode, areaName: z.string(), ...areaWalkFields })
export type AreaWalk = z.infer<typeof AreaWalk>

export const listAreaWalks = endpoint({
  method: 'GET',
  path: '/api/area-walks',
  who: everybody,
  ok: z.object({ walks: z.array(AreaWalk) }),
  status: 200,
})

export const changeAreaWalk = endpoint({
  method: 'PUT',
  path: '/api/area-walks/:code',
  who: registerKeepers,
  params: z.strictObject({ code: AreaCode }),
  body: z.strictObject(areaWalkFields),
  ok: AreaWalk,
  status: 200,
})
