import { addArea } from '@glandkeeper/contract/areas'
import { addCrew, addDaysOff, changeAreaWalk, retireCrew } from '@glandkeeper/contract/crews'
import { sendEvents } from '@glandkeeper/contract/events'
import {
  cancelPlanning,
  dropPlan,
  listVisits,
  makePlan,
  moveBlock,
  pinVisit,
  type PlannedVisit,
  showMoves,
  showPlanning,
  showPlans,
  takePlan,
  unpinVisit,
} from '@glandkeeper/contract/round-plans'
import { closeRound, listRounds, makeRoundsOfPlan } from '@glandkeeper/contract/rounds'
import { addValve } from '@glandkeeper/contract/valves'
import { aLeak, aMissedVisit } from '@glandkeeper/fixtures/a-reading'
import { aValve } from '@glandkeeper/fixtures/a-valve'
import { describe, expect, it } from 'vitest'
import { daysAfter } from '../../platform/local-time.ts'
import { aServer, type TestServer } from '../../../testing/a-server.ts'

/** The high criticality of these valves asks for a look every five weeks. */
const asked = { weeks: 12, frozenWeeks: 0, seed: 1 }
const WEEK = '2026-05-04'
const daysOff = { crewId: null, areaCode: null, reason: 'closed', repeats: null, share: 1 as never }

/** Two areas with three valves each, seen on the Friday before, and one crew. Today is Monday 4 May 2026. */
async function aPlantToPlan() {
  const server = await aServer()
  await server.expectOk('planner', addArea, { body: { code: 'TF', name: 'Tank farm', walkPosition: 5, level: 0 } })
  const ids: Record<string, string> = {}
  for (const [tag, areaCode, walkPosition, east] of [
    ['BH-1', 'BH', 10, 0],
    ['BH-2', 'BH', 20, 30],
    ['BH-3', 'BH', 30, 10],
    ['TF-1', 'TF', 10, 0],
    ['TF-2', 'TF', 20, 5],
    ['TF-3', 'TF', 30, 9],
  ] as const)
    ids[tag] = (
      await server.expectOk('planner', addValve, {
        body: aValve({ tag, areaCode, walkPosition, level: 0, east, north: 0, access: 'floor', criticality: 'high' }),
      })
    ).valveId
  const visit = async (...events: unknown[]) => server.expectOk('fitter', sendEvents, { body: { events } })
  for (const valveId of Object.values(ids)) await visit(aLeak({ valveId, takenAt: '2026-05-01T09:00:00Z', leak: 'dry' }))
  const { crewId } = await server.expectOk('planner', addCrew, {
    body: { name: 'Early shift', hoursPerWeek: 20, skills: [], personIds: [server.personIds.fitter] },
  })
  return { ...server, ids, visit, crewId }
}

async function planned(server: TestServer, body: Partial<typeof asked> = {}) {
  await server.expectOk('planner', makePlan, { body: { ...asked, ...body } })
  await expect.poll(async () => (await server.expectOk('planner', showPlanning)).share, { timeout: 20_000 }).toBeNull()
  expect((await server.expectOk('planner', showPlanning)).fault).toBeNull()
  const { draft } = await server.expectOk('planner', showPlans)
  if (!draft) throw new Error('no draft')
  return draft
}

async function takenPlan(server: TestServer, body: Partial<typeof asked> = {}) {
  const { planId } = await planned(server, body)
  await server.expectOk('planner', takePlan, { params: { planId } })
  return planId
}

const visitsOf = async (server: TestServer, query: object = {}) => (await server.expectOk('fitter', listVisits, { query })).visits
const weeksOf = (visits: readonly PlannedVisit[], tag: string) => visits.filter((one) => one.tag === tag).map((one) => one.weekOf)
const count = (names: readonly string[]) =>
  Object.fromEntries([...new Set(names)].map((name) => [name, names.filter((other) => other === name).length]))

describe('planning rounds', () => {
  it('plans every visit once in its window, opens areas seldom, and shows the cost beside its bound', async () => {
    const server = await aPlantToPlan()
    const plan = await planned(server)
    expect([plan.impossible, plan.startsOn, plan.takenAt]).toEqual([[], WEEK, null])
    // Seen on 1 May and every five weeks from then: the weeks of 1 June and 6 July, a week to either side.
    const visits = await visitsOf(server, { planId: plan.planId })
    expect(count(visits.map(({ tag, dueWeekOf }) => `${tag} ${dueWeekOf}`))).toEqual(
      Object.fromEntries(
        Object.keys(server.ids).flatMap((tag) => [
          [`${tag} 2026-06-01`, 1],
          [`${tag} 2026-07-06`, 1],
        ]),
      ),
    )
    for (const { weekOf, earliest, latest } of visits) expect([weekOf! >= earliest, weekOf! <= latest]).toEqual([true, true])
    // Each area opens twice: the fewest weeks there can be.
    expect(plan.blocks.map(({ visits: many }) => many)).toEqual([3, 3, 3, 3])
    expect([plan.setUpHours, plan.visitHours]).toEqual([expect.closeTo((4 * 40) / 60, 6), expect.closeTo(1, 6)])
    expect([plan.cost >= plan.bound, plan.gap < 0.01]).toEqual([true, true])
    expect(await visitsOf(server)).toEqual([])
  })

  it('gives the same plan for the same register and seed, and keeps one draft', async () => {
    const server = await aPlantToPlan()
    const one = await visitsOf(server, { planId: (await planned(server)).planId })
    const other = await visitsOf(server, { planId: (await planned(server)).planId })
    expect([other, await server.store.read.roundPlan.count()]).toEqual([one, 1])
  })

  it('lists what is impossible with its reason: an area closed all year, a skill nobody has, no crew at all', async () => {
    const server = await aPlantToPlan()
    const reasons = async () => count((await planned(server)).impossible.map(({ areaCode, reason }) => `${areaCode}: ${reason}`))
    await server.expectOk('planner', addDaysOff, {
      body: { ...daysOff, areaCode: 'TF', startsOn: '2026-05-01', endsOn: '2027-04-30' },
    })
    expect(await reasons()).toEqual({ 'TF: closed all through its window': 6 })
    await server.expectOk('planner', changeAreaWalk, {
      params: { code: 'BH' },
      body: { setUpMinutes: null, skill: 'chlorine', crewId: null, walkPlan: null },
    })
    expect(await reasons()).toEqual({ 'TF: closed all through its window': 6, 'BH: no crew has the skill': 6 })
    await server.expectOk('planner', retireCrew, { params: { crewId: server.crewId } })
    expect(await reasons()).toEqual({ 'TF: no crew': 6, 'BH: no crew': 6 })
  })

  it('keeps out of weeks in which the site does not work, and says so of each visit', async () => {
    const server = await aPlantToPlan()
    await server.expectOk('planner', addDaysOff, { body: { ...daysOff, startsOn: '2026-06-01', endsOn: '2026-06-05' } })
    const visits = await visitsOf(server, { planId: (await planned(server)).planId })
    const moved = visits.filter(({ dueWeekOf }) => dueWeekOf === '2026-06-01')
    expect(moved.map(({ weekOf, reason }) => [weekOf !== '2026-06-01', reason])).toEqual(
      moved.map(() => [true, 'no crew hours in its due week']),
    )
  })

  it('can be cancelled, and leaves no half of a plan', async () => {
    const server = await aPlantToPlan()
    await server.expectOk('planner', makePlan, { body: asked })
    expect(await server.expectOk('planner', cancelPlanning)).toEqual({ wasPlanning: true })
    expect(await server.expectOk('planner', showPlanning)).toEqual({ share: null, fault: null })
    expect(await server.store.read.roundPlan.count()).toBe(0)
    expect(await server.expectOk('planner', cancelPlanning)).toEqual({ wasPlanning: false })
  })

  it('is for those who keep the register; a fitter may look', async () => {
    const server = await aPlantToPlan()
    expect(await server.call('fitter', makePlan, { body: asked })).toMatchObject({ status: 403 })
    expect(await server.expectOk('fitter', showPlans)).toEqual({ taken: null, draft: null, isPlanning: false })
  })
})

describe('a plan in use', () => {
  it('is taken once, and shows what the next one moves', async () => {
    const server = await aPlantToPlan()
    const planId = await takenPlan(server)
    expect(await server.call('planner', takePlan, { params: { planId } })).toMatchObject({
      problem: { code: 'plan/not-a-draft' },
    })
    expect((await server.expectOk('planner', showPlans)).taken).toMatchObject({ planId, takenBy: 'The planner' })
    const before = await visitsOf(server)
    const from = before[0]!.weekOf!
    const inThatWeek = before.filter(({ weekOf }) => weekOf === from).length
    await server.expectOk('planner', addDaysOff, { body: { ...daysOff, startsOn: from, endsOn: daysAfter(from, 4) } })
    const draft = await planned(server)
    const { moves, same, isFirst } = await server.expectOk('planner', showMoves, { params: { planId: draft.planId } })
    expect(isFirst).toBe(false)
    // What lay in the week that is off moves, and nothing else.
    expect(moves.map((one) => [one.from, one.to === from])).toEqual(moves.map(() => [from, false]))
    expect(moves.reduce((sum, { visits }) => sum + visits, 0)).toBe(inThatWeek)
    expect(same).toBe(12 - inThatWeek)
    await server.expectOk('planner', dropPlan, { params: { planId: draft.planId } })
    expect((await server.expectOk('planner', showPlans)).draft).toBeNull()
  })

  it('keeps a pin through every plan after, until it is taken out', async () => {
    const server = await aPlantToPlan()
    await takenPlan(server)
    const body = { tag: 'BH-2', weekOf: '2026-05-18', crewId: null }
    await server.expectOk('planner', pinVisit, { body })
    expect(weeksOf(await visitsOf(server), 'BH-2')).toContain('2026-05-18')
    await takenPlan(server)
    const pinned = (await visitsOf(server, { tag: 'BH-2' }))[0]
    expect(pinned).toMatchObject({ weekOf: '2026-05-18', reason: 'pinned', isPinned: true, pinnedBy: 'The planner' })
    expect(await server.expectOk('planner', unpinVisit, { body: { tag: 'BH-2', weekOf: '2026-05-18' } })).toEqual({
      removed: true,
    })
    await takenPlan(server)
    expect(weeksOf(await visitsOf(server), 'BH-2')).not.toContain('2026-05-18')
  })

  it('moves a block of visits at once, pins it there, and makes a draft that did not know of it out of date', async () => {
    const server = await aPlantToPlan()
    const planId = await takenPlan(server)
    const block = (await server.expectOk('planner', showPlans)).taken!.blocks.find(({ areaCode }) => areaCode === 'BH')!
    const draft = await planned(server)
    const to = block.week + 1
    const { crewId } = server
    expect(
      await server.expectOk('planner', moveBlock, { params: { planId }, body: { areaCode: 'BH', crewId, from: block.week, to } }),
    ).toEqual({ moved: 3 })
    expect(await server.call('planner', takePlan, { params: { planId: draft.planId } })).toMatchObject({
      problem: { code: 'plan/out-of-date' },
    })
    const { blocks } = (await server.expectOk('planner', showPlans)).taken!
    expect(blocks.find(({ areaCode, week }) => areaCode === 'BH' && week === to)).toMatchObject({ visits: 3, isPinned: true })
    await takenPlan(server)
    expect((await server.expectOk('planner', showPlans)).taken!.blocks).toContainEqual(
      expect.objectContaining({ areaCode: 'BH', week: to, visits: 3, isPinned: true }),
    )
    expect(
      await server.call('planner', moveBlock, { params: { planId }, body: { areaCode: 'BH', crewId, from: 0, to: 1 } }),
    ).toMatchObject({ problem: { code: 'plan/no-visit' } })
  })
})

describe('what has been done', () => {
  it('is not planned a second time in a week that stays as it is, and takes its pin along', async () => {
    const server = await aPlantToPlan()
    await takenPlan(server)
    const pin = { tag: 'BH-1', weekOf: WEEK, crewId: null }
    await server.expectOk('planner', pinVisit, { body: pin })
    await takenPlan(server, { frozenWeeks: 1 })
    expect(weeksOf(await visitsOf(server), 'BH-1')).toContain(WEEK)
    // A look of this week, a second after the pin by any clock of a test.
    await server.visit(aLeak({ valveId: server.ids['BH-1']!, takenAt: '2026-05-04T09:00:01Z', leak: 'dry' }))
    await takenPlan(server, { frozenWeeks: 1 })
    expect(weeksOf(await visitsOf(server), 'BH-1')).not.toContain(WEEK)
  })
})

describe('rounds of a plan', () => {
  /** Frozen for no week, so that the block of BH can be walked in the week the plan has it. */
  async function aRound(days = [{ walkOn: '2026-06-03', fitterId: null as string | null }]) {
    const server = await aPlantToPlan()
    await takenPlan(server)
    const { taken } = await server.expectOk('planner', showPlans)
    const { week } = taken!.blocks.find(({ areaCode }) => areaCode === 'BH')!
    const weekOf = (await visitsOf(server, { week, areaCode: 'BH' }))[0]!.weekOf!
    const { rounds } = await server.expectOk('planner', makeRoundsOfPlan, {
      body: { weekOf, areaCode: 'BH', crewId: server.crewId, days },
    })
    return { ...server, server, weekOf, week, rounds }
  }

  it('go the shortest way, say what they take, and are on the phones', async () => {
    const { server, rounds, weekOf } = await aRound()
    expect(rounds).toHaveLength(1)
    expect(rounds[0]).toMatchObject({ state: 'open', weekOf, areaCode: 'BH', crewName: 'Early shift', metres: 30, levels: 0 })
    // 0, 10 and 30 m east: not the order of their walking positions.
    expect(rounds[0]!.stops.map(({ tag }) => tag)).toEqual(['BH-1', 'BH-3', 'BH-2'])
    expect(rounds[0]!.minutes).toBeCloseTo(40 + 3 * 5 + 30 / 50, 6)
    expect((await server.expectOk('fitter', listRounds)).rounds).toEqual(rounds)
  })

  it('are cut into as many as there are days, and a second time there is nothing left to make', async () => {
    const days = [
      { walkOn: '2026-06-03', fitterId: null },
      { walkOn: '2026-06-04', fitterId: null },
    ]
    const { server, rounds, weekOf, crewId } = await aRound(days)
    expect(rounds.map(({ walkOn, stops, name }) => [walkOn, stops.length, name])).toEqual([
      ['2026-06-03', expect.any(Number), expect.stringMatching(/^Boiler house, week \d+, 1 of 2$/)],
      ['2026-06-04', expect.any(Number), expect.stringMatching(/, 2 of 2$/)],
    ])
    expect(rounds.flatMap(({ stops }) => stops.map(({ tag }) => tag))).toEqual(['BH-1', 'BH-3', 'BH-2'])
    expect(await server.call('planner', makeRoundsOfPlan, { body: { weekOf, areaCode: 'BH', crewId, days } })).toMatchObject({
      problem: { code: 'plan/no-visit' },
    })
  })

  it('stay where they are in the next plan, and are not moved by hand', async () => {
    const { server, week, crewId } = await aRound()
    const { taken } = await server.expectOk('planner', showPlans)
    expect(taken!.blocks).toContainEqual(expect.objectContaining({ areaCode: 'BH', week, isFrozen: true }))
    expect(
      await server.call('planner', moveBlock, {
        params: { planId: taken!.planId },
        body: { areaCode: 'BH', crewId, from: week, to: week + 1 },
      }),
    ).toMatchObject({ problem: { code: 'plan/frozen' } })
    await server.expectOk('planner', addDaysOff, { body: { ...daysOff, startsOn: '2026-05-04', endsOn: '2026-06-30' } })
    const draft = await planned(server)
    expect(draft.blocks).toContainEqual(expect.objectContaining({ areaCode: 'BH', week, visits: 3 }))
  })

  it('a stop that could not be done, and one nobody was at, come back within the weeks to catch up', async () => {
    const { server, rounds, visit, ids } = await aRound()
    await visit(
      aLeak({ valveId: ids['BH-1']!, takenAt: '2026-05-04T08:59:00Z' }),
      aMissedVisit({ valveId: ids['BH-2']!, takenAt: '2026-05-04T08:59:30Z', reason: 'too hot' }),
    )
    // The round was made at nine: what came before does not count for it.
    expect(await server.expectOk('planner', closeRound, { params: { roundId: rounds[0]!.roundId } })).toEqual({
      closed: true,
      leftOut: 3,
    })
    await takenPlan(server)
    const back = (await visitsOf(server)).filter(({ cause }) => cause === 'missed on a round')
    expect(back.map(({ tag, earliest, latest }) => [tag, earliest, latest])).toEqual(
      expect.arrayContaining([
        ['BH-2', WEEK, '2026-05-11'],
        ['BH-3', WEEK, '2026-05-11'],
      ]),
    )
    expect(back.find(({ tag }) => tag === 'BH-2')?.missed).toBe('too hot')
    expect(back.find(({ tag }) => tag === 'BH-3')?.missed).toBeNull()
    expect(back.every(({ weekOf }) => weekOf! <= '2026-05-11')).toBe(true)
  })
})
