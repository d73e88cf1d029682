import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Crew, type DueVisit, type PlanArea, type RoundPlanInput, usualPlanRules } from './input.ts'
import { planRounds, type RoundPlan } from './plan.ts'

const aCrew = (crew: Partial<Crew> = {}): Crew => ({ id: 'A', hours: Array.from({ length: 8 }, () => 10), skills: [], ...crew })
const anArea = (area: Partial<PlanArea> = {}): PlanArea => ({
  id: 'BH',
  setUpHours: 1,
  closedWeeks: [],
  skill: null,
  crewId: null,
  ...area,
})
const aVisit = (visit: Partial<DueVisit> = {}): DueVisit => ({
  id: 'v1',
  areaId: 'BH',
  due: 3,
  earliest: 2,
  latest: 4,
  hours: 0.5,
  weight: 1,
  before: null,
  pin: null,
  frozen: null,
  ...visit,
})
const anInput = (input: Partial<RoundPlanInput> = {}): RoundPlanInput => ({
  weeks: 8,
  crews: [aCrew()],
  areas: [anArea()],
  visits: [aVisit()],
  rules: usualPlanRules,
  seed: 1,
  ...input,
})
const planOf = (input: Partial<RoundPlanInput>): RoundPlan => {
  const plan = planRounds(anInput(input))
  if (!plan.ok) throw new Error(plan.problem.detail)
  return plan
}
const inWeeks = (plan: RoundPlan) => plan.visits.map(({ visitId, week, reason }) => [visitId, week, reason])

describe('a plan of rounds', () => {
  it('makes a visit in its due week where nothing stands against it', () => {
    expect(inWeeks(planOf({}))).toEqual([['v1', 3, 'in its due week']])
  })

  it('opens an area once for visits whose windows meet', () => {
    const visits = [aVisit(), aVisit({ id: 'v2', due: 5, earliest: 4, latest: 6 })]
    const plan = planOf({ visits })
    expect(inWeeks(plan)).toEqual([
      ['v1', 4, 'area opens once'],
      ['v2', 4, 'area opens once'],
    ])
    expect([plan.setUpHours, plan.inDueWeeks.setUpHours, plan.bound, plan.gap]).toEqual([1, 2, 1, 0])
  })

  it('spreads what one week cannot hold', () => {
    const visits = Array.from({ length: 30 }, (_, index) => aVisit({ id: `v${index}` }))
    const plan = planOf({ visits })
    // Fifteen hours and their set-up do not fit into ten.
    expect(plan.overtimeHours).toBe(0)
    expect(new Set(plan.visits.map(({ week }) => week)).size).toBe(2)
    expect(plan.inDueWeeks.overtimeHours).toBe(6)
  })

  it('keeps to the due week while that is easy, however even the weeks could be', () => {
    const visits = [
      ...Array.from({ length: 6 }, (_, index) => aVisit({ id: `a${index}`, due: 2, earliest: 2, latest: 2 })),
      ...Array.from({ length: 6 }, (_, index) => aVisit({ id: `b${index}`, due: 4, earliest: 2, latest: 4 })),
      aVisit({ id: 'c', due: 4, earliest: 4, latest: 4 }),
    ]
    expect(
      planOf({ visits })
        .visits.filter(({ visitId }) => visitId.startsWith('b'))
        .map(({ week }) => week),
    ).toEqual([4, 4, 4, 4, 4, 4])
  })

  it.each([
    ['its area is closed', { areas: [anArea({ closedWeeks: [3] })] }, 'area closed in its due week'],
    ['the crew has no hours', { crews: [aCrew({ hours: [10, 10, 10, 0, 10, 10, 10, 10] })] }, 'no crew hours in its due week'],
    ['nothing new is planned then', { rules: { ...usualPlanRules, frozenWeeks: 4 } }, 'nothing new in its due week'],
  ] as const)('says why a visit is not in its due week: %s', (_, input, reason) => {
    const [visit] = planOf(input).visits
    expect([visit?.week === 3, visit?.reason]).toEqual([false, reason])
  })

  it('keeps pins, also outside the window and in a closed week, and what is frozen', () => {
    const visits = [
      aVisit({ id: 'pinned', pin: { week: 6, crewId: null } }),
      aVisit({ id: 'with B', pin: { week: null, crewId: 'B' } }),
      aVisit({ id: 'made', frozen: { week: 0, crewId: 'B' } }),
    ]
    const plan = planOf({
      visits,
      crews: [aCrew(), aCrew({ id: 'B', hours: Array(8).fill(5) })],
      areas: [anArea({ closedWeeks: [6] })],
    })
    const found = new Map(plan.visits.map((visit) => [visit.visitId, visit]))
    expect(found.get('pinned')).toMatchObject({ week: 6, reason: 'pinned' })
    expect(found.get('with B')).toMatchObject({ crewId: 'B' })
    expect(found.get('made')).toMatchObject({ week: 0, crewId: 'B', reason: 'frozen' })
  })

  it('leaves visits where the plan before had them, unless something is won', () => {
    const visits = [aVisit({ id: 'v1', before: 4 }), aVisit({ id: 'v2', due: 5, earliest: 4, latest: 6, before: 4 })]
    expect(planOf({ visits }).visits.map(({ week }) => week)).toEqual([4, 4])
    // One set-up saved is worth moving half an hour; the other way round it is not.
    const apart = [aVisit({ id: 'v1', before: 3 }), aVisit({ id: 'v2', due: 5, earliest: 4, latest: 6, before: 5 })]
    expect(new Set(planOf({ visits: apart }).visits.map(({ week }) => week)).size).toBe(1)
    const cheap = { areas: [anArea({ setUpHours: 0.05 })], visits: apart }
    expect(planOf(cheap).visits.map(({ week }) => week)).toEqual([3, 5])
  })

  it('gives areas to the crews that may walk them, by what each has left', () => {
    const areas = [anArea({ id: 'BH', skill: 'steam' }), anArea({ id: 'TF' }), anArea({ id: 'EF', crewId: 'A' })]
    const visits = areas.map(({ id }) => aVisit({ id: `in ${id}`, areaId: id }))
    const plan = planOf({ areas, visits, crews: [aCrew(), aCrew({ id: 'B', skills: ['steam'] })] })
    expect(new Map(plan.visits.map(({ visitId, crewId }) => [visitId, crewId]))).toEqual(
      new Map([
        ['in EF', 'A'],
        ['in BH', 'B'],
        ['in TF', expect.stringMatching(/^[AB]$/)],
      ]),
    )
  })
})

describe('what cannot be planned', () => {
  it.each([
    ['no crew', { crews: [] }, 'no crew'],
    ['no crew with the skill', { areas: [anArea({ skill: 'steam' })] }, 'no crew has the skill'],
    ['an area closed all through', { areas: [anArea({ closedWeeks: [2, 3, 4] })] }, 'closed all through its window'],
    ['no hours', { crews: [aCrew({ hours: Array(8).fill(0) })] }, 'no crew hours in its window'],
    ['due in the past', { visits: [aVisit({ due: -5, earliest: -6, latest: -4 })] }, 'its window is over'],
    ['a window that is frozen', { rules: { ...usualPlanRules, frozenWeeks: 5 } }, 'its window is over'],
    ['a pin beyond the plan', { visits: [aVisit({ pin: { week: 9, crewId: null } })] }, 'pinned week beyond the plan'],
    ['more than a week may hold', { visits: [aVisit({ hours: 30 })] }, 'hours run short'],
    [
      'more than a pinned week may hold',
      { visits: [aVisit({ hours: 30, pin: { week: 3, crewId: null } })] },
      'pinned week is full',
    ],
  ] as const)('is listed with its reason: %s', (_, input, reason) => {
    const plan = planOf(input as Partial<RoundPlanInput>)
    expect([plan.visits, plan.impossible]).toEqual([[], [{ visitId: 'v1', reason }]])
    expect([plan.cost, plan.bound]).toEqual([0, 0])
  })

  it('is what weighs least where hours run short', () => {
    const visits = Array.from({ length: 40 }, (_, index) => aVisit({ id: `v${index}`, hours: 1, weight: index < 5 ? 1 : 2 }))
    const plan = planOf({ visits, crews: [aCrew({ hours: [0, 0, 11, 11, 11, 0, 0, 0] })] })
    // Three weeks of 13.2 hours at most hold twelve visits each, with their set-up.
    expect(plan.visits).toHaveLength(36)
    expect(plan.impossible).toHaveLength(4)
    expect(['v0', 'v1', 'v2', 'v3', 'v4']).toEqual(expect.arrayContaining(plan.impossible.map(({ visitId }) => visitId)))
  })

  it.each([
    ['weeks', { weeks: 0 }, 'plan/weeks'],
    ['hours of a crew', { crews: [aCrew({ hours: [1] })] }, 'plan/crew-hours'],
    ['hours that are none', { crews: [aCrew({ hours: Array(8).fill(NaN) })] }, 'plan/crew-hours'],
    ['a set-up', { areas: [anArea({ setUpHours: -1 })] }, 'plan/set-up'],
    ['an area', { visits: [aVisit({ areaId: 'XX' })] }, 'plan/area-unknown'],
    ['hours of a visit', { visits: [aVisit({ hours: Infinity })] }, 'plan/visit-hours'],
    ['a window', { visits: [aVisit({ earliest: 5 })] }, 'plan/window'],
    ['a price', { rules: { ...usualPlanRules, overtimePrice: NaN } }, 'plan/rules'],
  ] as const)('is refused by name where the input is no plan: %s', (_, input, code) => {
    const plan = planRounds(anInput(input as Partial<RoundPlanInput>))
    expect(plan.ok ? 'planned' : plan.problem.code).toBe(code)
  })
})

describe('the search', () => {
  const many = Array.from({ length: 300 }, (_, index) =>
    aVisit({
      id: `v${index}`,
      areaId: `area ${index % 6}`,
      due: index % 26,
      earliest: (index % 26) - 1,
      latest: (index % 26) + 2,
      hours: 0.2,
    }),
  )
  const large: Partial<RoundPlanInput> = {
    weeks: 30,
    crews: [aCrew({ hours: Array(30).fill(5) })],
    areas: Array.from({ length: 6 }, (_, index) => anArea({ id: `area ${index}` })),
    visits: many,
  }

  it('gives the same plan for the same input and seed', () => {
    expect(planOf(large)).toEqual(planOf(large))
  })

  it('says how far it is, and ends with a whole plan when it is told to stop', () => {
    const shares: number[] = []
    let asked = 0
    const plan = planRounds(anInput(large), { onProgress: (share) => shares.push(share), shouldStop: () => (asked += 1) > 3 })
    if (!plan.ok) throw new Error(plan.problem.detail)
    expect([plan.isCutShort, plan.visits.length + plan.impossible.length]).toEqual([true, 300])
    expect(shares).toEqual(shares.toSorted((one, other) => one - other))
    expect(shares.at(-1)).toBe(1)
    expect(planOf(large).isCutShort).toBe(false)
  })
})

const WEEKS = 8
const somePlan = fc
  .record({
    crews: fc.array(
      fc.record({
        hours: fc.array(fc.integer({ min: 0, max: 6 }), { minLength: WEEKS, maxLength: WEEKS }),
        isSkilled: fc.boolean(),
      }),
      {
        maxLength: 2,
      },
    ),
    areas: fc.array(
      fc.record({
        setUpHours: fc.integer({ min: 0, max: 3 }),
        closedWeeks: fc.uniqueArray(fc.nat(WEEKS - 1)),
        asksForSkill: fc.boolean(),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    visits: fc.array(
      fc.record({
        area: fc.nat(2),
        due: fc.integer({ min: -2, max: WEEKS + 1 }),
        half: fc.nat(3),
        hours: fc.constantFrom(0.2, 0.5, 1, 4),
        weight: fc.integer({ min: 1, max: 4 }),
        before: fc.option(fc.nat(WEEKS - 1)),
        pinnedWeek: fc.option(fc.nat(WEEKS - 1), { freq: 5 }),
        isFrozen: fc.boolean(),
      }),
      { maxLength: 30 },
    ),
    frozenWeeks: fc.nat(2),
    seed: fc.nat(50),
  })
  .map(({ crews, areas, visits, frozenWeeks, seed }): RoundPlanInput => ({
    weeks: WEEKS,
    crews: crews.map(({ hours, isSkilled }, index) => ({ id: `crew ${index}`, hours, skills: isSkilled ? ['steam'] : [] })),
    areas: areas.map(({ setUpHours, closedWeeks, asksForSkill }, index) => ({
      id: `area ${index}`,
      setUpHours,
      closedWeeks,
      skill: asksForSkill ? 'steam' : null,
      crewId: null,
    })),
    visits: visits.map(({ area, due, half, hours, weight, before, pinnedWeek, isFrozen }, index) => ({
      id: `visit ${index}`,
      areaId: `area ${area % areas.length}`,
      due,
      earliest: due - half,
      latest: due + half,
      hours,
      weight,
      before,
      pin: pinnedWeek === null ? null : { week: pinnedWeek, crewId: null },
      frozen: isFrozen && frozenWeeks > 0 && crews.length > 0 && hours < 1 ? { week: 0, crewId: 'crew 0' } : null,
    })),
    rules: { ...usualPlanRules, frozenWeeks },
    seed,
  }))

describe('every plan', () => {
  it('has each visit once, in its window or listed; keeps pins, frozen weeks and limits; and adds up', () => {
    fc.assert(
      fc.property(somePlan, (input) => {
        const plan = planRounds(input)
        if (!plan.ok) throw new Error(plan.problem.detail)
        const visits = new Map(input.visits.map((visit) => [visit.id, visit]))
        const named = [...plan.visits, ...plan.impossible].map(({ visitId }) => visitId)
        expect(named.toSorted()).toEqual([...visits.keys()].toSorted())
        for (const { visitId, week, crewId } of plan.visits) {
          const visit = visits.get(visitId)!
          const area = input.areas.find(({ id }) => id === visit.areaId)!
          if (visit.frozen) expect([week, crewId]).toEqual([visit.frozen.week, visit.frozen.crewId])
          else if (visit.pin) expect(week).toBe(visit.pin.week)
          else {
            expect(week).toBeGreaterThanOrEqual(Math.max(visit.earliest, input.rules.frozenWeeks))
            expect(week).toBeLessThanOrEqual(visit.latest)
            expect(area.closedWeeks).not.toContain(week)
            expect(input.crews.find(({ id }) => id === crewId)!.hours[week]).toBeGreaterThan(0)
          }
        }
        recount(input, plan)
      }),
      { numRuns: 150 },
    )
  }, 60_000)
})

/** Hours, limits and cost worked out anew from the visits alone. */
function recount(input: RoundPlanInput, plan: RoundPlan) {
  const visits = new Map(input.visits.map((visit) => [visit.id, visit]))
  let cost = 0
  for (const crew of input.crews) {
    const weeks = plan.crewWeeks.find(({ crewId }) => crewId === crew.id)!
    for (let week = 0; week < input.weeks; week += 1) {
      const here = plan.visits
        .filter((visit) => visit.crewId === crew.id && visit.week === week)
        .map(({ visitId }) => visits.get(visitId)!)
      const setUp = input.areas
        .filter(({ id }) => here.some(({ areaId }) => areaId === id))
        .reduce((sum, { setUpHours }) => sum + setUpHours, 0)
      const load = here.reduce((sum, { hours }) => sum + hours, 0) + setUp
      expect(weeks.visitHours[week]! + weeks.setUpHours[week]!).toBeCloseTo(load, 9)
      // What is frozen may be more than a crew has: its round is made.
      if (here.every(({ frozen }) => frozen === null)) expect(load).toBeLessThanOrEqual(1.2 * crew.hours[week]! + 1e-5)
      const easy = 0.85 * crew.hours[week]!
      cost += setUp + 0.2 * Math.max(0, Math.min(load, crew.hours[week]!) - easy) + 3 * Math.max(0, load - crew.hours[week]!)
    }
  }
  expect(plan.cost).toBeCloseTo(cost, 6)
  expect(plan.bound).toBeLessThanOrEqual(plan.cost + 1e-6)
}
