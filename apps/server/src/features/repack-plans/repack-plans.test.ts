import { addArea } from '@glandkeeper/contract/areas'
import { showLog } from '@glandkeeper/contract/log'
import { addOutage, listOutages } from '@glandkeeper/contract/outages'
import {
  cancelRepackPlanning,
  compareRepackPlans,
  dropRepackPlan,
  listRepackPlans,
  makeRepackPlan,
  showRepackPlan,
  showRepackPlanning,
  takeRepackPlan,
} from '@glandkeeper/contract/repack-plans'
import { moveRepack, pinRepack, unpinRepack } from '@glandkeeper/contract/repack-pins'
import { confirmSetting } from '@glandkeeper/contract/settings'
import { describe, expect, it } from 'vitest'
import { aPlantToRepack, aStop } from '../../../testing/a-plant-to-repack.ts'

const inOutage = (outageId: string) => `outage:${outageId}`

async function withSummerStop(more: object = {}) {
  const plant = await aPlantToRepack()
  const { outageId } = await plant.expectOk('planner', addOutage, { body: aStop('Summer stop', '2026-07-06', more) })
  return { ...plant, slotId: inOutage(outageId), outageId }
}

describe('a plan of repacks', () => {
  it('says of every valve its slot and why, keeps a boundary together, and adds up', async () => {
    const { plan, repacks, slotId } = await withSummerStop()
    const made = await plan()
    const rows = await repacks(made.planId)
    expect(rows.map(({ tag }) => tag)).toEqual(['BH-1', 'BH-2', 'BH-3', 'BH-4', 'BH-5', 'BH-6'])
    expect(rows.filter((row) => row.slotId === slotId).map(({ tag }) => tag)).toEqual(['BH-1', 'BH-2', 'BH-6'])
    expect(rows[5]).toMatchObject({ reason: 'only an outage isolates it', boundary: '', runnerUp: { slotId: null } })
    expect(rows[3]).toMatchObject({ slotId: expect.stringMatching(/^fortnight:/), reason: 'costs least of all its slots' })
    const { totals, bound, gap, slots } = made
    expect(totals).toMatchObject({ valves: 6, repacks: 6, waits: 0 })
    expect(totals.expectedOut).toBeCloseTo(
      rows.reduce((sum, row) => sum + row.chanceOut, 0),
      9,
    )
    expect(totals.cost.total).toBeCloseTo(totals.cost.running + totals.cost.leaks + totals.cost.waste, 9)
    expect([bound <= totals.cost.total + 1e-9, gap < 1e-6]).toEqual([true, true])
    const stop = slots.find((slot) => slot.slotId === slotId)
    // Three valves of two hours, two boundaries of one and a half.
    expect(stop).toMatchObject({ repacks: 3, used: { fitting: 6, isolating: 3, scaffolding: 0 } })
  })

  it('leaves out what is not likely to run out, and what it cannot place waits with its reason', async () => {
    const { plan, repacks, expectOk } = await aPlantToRepack()
    // Without an outage nothing isolates BH-1, BH-2 and BH-6.
    const made = await plan()
    const rows = await repacks(made.planId, { slotId: 'none' })
    expect(rows.map(({ tag, reason }) => [tag, reason])).toEqual([
      ['BH-1', 'no slot is open to it'],
      ['BH-2', 'no slot is open to it'],
      ['BH-6', 'no slot is open to it'],
    ])
    await expectOk('planner', confirmSetting, { params: { key: 'planChance' }, body: { seen: 0.1, value: 0.9 } as never })
    await expectOk('planner', confirmSetting, { params: { key: 'bookChance' }, body: { seen: 0.3, value: 0.9 } as never })
    const fewer = await plan({ weeks: 4 })
    expect(fewer.totals.valves).toBeLessThan(6)
  })

  it('weighs an outage that nobody is sure of by all the days it may begin on', async () => {
    const settled = await withSummerStop()
    const sure = (await settled.repacks((await settled.plan()).planId)).find(({ tag }) => tag === 'BH-1')
    const unsure = await withSummerStop({ earliestOn: '2026-07-06', latestOn: '2027-03-20' })
    const later = (await unsure.repacks((await unsure.plan()).planId)).find(({ tag }) => tag === 'BH-1')
    expect(later?.chanceOut).toBeGreaterThan((sure?.chanceOut ?? 1) + 0.01)
  })

  it('an outage that does not reach an area isolates nothing of it', async () => {
    const { plan, repacks, call, expectOk } = await aPlantToRepack()
    await expectOk('planner', addArea, { body: { code: 'BM', name: 'Board machine', walkPosition: 40, level: 0 } as never })
    const stop = aStop('Wire change', '2026-07-06', { areaCodes: ['BM'] })
    const { outageId } = await expectOk('planner', addOutage, { body: stop })
    const { planId } = await plan()
    expect(await repacks(planId, { slotId: inOutage(outageId) as never })).toEqual([])
    expect(
      await call('planner', moveRepack, { params: { planId }, body: { tag: 'BH-6', slotId: inOutage(outageId) } }),
    ).toMatchObject({ problem: { code: 'repack/cannot-be-there', detail: 'Wire change does not reach its area' } })
    expect(await call('planner', addOutage, { body: { ...stop, areaCodes: ['XX'] } })).toMatchObject({
      problem: { code: 'area/unknown' },
    })
  })

  it('is held by no more hours than a slot has', async () => {
    const { plan, repacks, slotId } = await withSummerStop({ hours: { fitting: 4, scaffolding: 0, isolating: 12 } })
    const rows = await repacks((await plan()).planId)
    const there = rows.filter((row) => row.slotId === slotId)
    expect(there.reduce((sum, { hours }) => sum + hours.fitting, 0)).toBeLessThanOrEqual(4)
    expect(rows.find((row) => row.slotId === null)).toMatchObject({ reason: 'no slot has room', blockedBy: 'fitting' })
  })
})

describe('pins', () => {
  it('are kept by every plan after; one that cannot be is named, and its boundary waits', async () => {
    const { plan, repacks, expectOk, slotId } = await withSummerStop()
    await expectOk('planner', pinRepack, { body: { tag: 'BH-4', slotId, kind: 'in' } })
    await expectOk('planner', pinRepack, { body: { tag: 'BH-3', slotId: 'fortnight:2026-05-04', kind: 'not in' } })
    await expectOk('planner', pinRepack, { body: { tag: 'BH-6', slotId: 'fortnight:2026-05-18', kind: 'in' } })
    const made = await plan()
    const rows = await repacks(made.planId)
    expect(rows[3]).toMatchObject({ slotId, reason: 'pinned', pin: { kind: 'in', by: 'The planner' } })
    expect(rows[2]?.slotId).not.toBe('fortnight:2026-05-04')
    expect(rows[5]).toMatchObject({ slotId: null, reason: 'pin cannot be kept' })
    expect(made.infeasiblePins).toEqual([
      { tags: ['BH-6'], slotId: 'fortnight:2026-05-18', why: expect.stringContaining('cannot be isolated') },
    ])
    await expectOk('planner', unpinRepack, { body: { tag: 'BH-6', slotId: 'fortnight:2026-05-18' } })
    expect((await plan()).infeasiblePins).toEqual([])
  })

  it('are noted in the log with their slot as a person calls it', async () => {
    const { expectOk, slotId } = await withSummerStop()
    await expectOk('planner', pinRepack, { body: { tag: 'BH-4', slotId, kind: 'in' } })
    await expectOk('planner', pinRepack, { body: { tag: 'BH-3', slotId: 'fortnight:2026-05-04', kind: 'not in' } })
    await expectOk('planner', unpinRepack, { body: { tag: 'BH-4', slotId } })
    const { rows } = await expectOk('planner', showLog, { query: { subject: 'valve', find: 'pin' } })
    const told = rows.map(({ name, what, changes: [slot] }) => `${name} ${what} ${slot?.before}>${slot?.after}`)
    expect(told.toSorted()).toEqual([
      'BH-3 repack pinned: not in >fortnight from 2026-05-04',
      'BH-4 pin of a repack removed Summer stop>',
      'BH-4 repack pinned: in >Summer stop',
    ])
  })

  it('of valves that are isolated together clash by name: the newest holds', async () => {
    const { plan, repacks, expectOk, slotId, setNow } = await withSummerStop()
    const { outageId } = await expectOk('planner', addOutage, { body: aStop('Autumn stop', '2026-10-05') })
    await expectOk('planner', pinRepack, { body: { tag: 'BH-1', slotId, kind: 'in' } })
    setNow('2026-05-04T10:00:00Z')
    await expectOk('planner', pinRepack, { body: { tag: 'BH-2', slotId: inOutage(outageId), kind: 'in' } })
    const made = await plan()
    expect((await repacks(made.planId)).slice(0, 2).map((row) => row.slotId)).toEqual([inOutage(outageId), inOutage(outageId)])
    expect(made.infeasiblePins).toMatchObject([{ tags: ['BH-1', 'BH-2'], slotId, why: expect.stringContaining('BH-1') }])
  })
})

describe('moving a valve', () => {
  it('takes its whole boundary along and pins it there', async () => {
    const { plan, repacks, expectOk } = await withSummerStop()
    const { outageId } = await expectOk('planner', addOutage, { body: aStop('Autumn stop', '2026-10-05') })
    const { planId } = await plan()
    const before = await repacks(planId)
    const moved = await expectOk('planner', moveRepack, { params: { planId }, body: { tag: 'BH-1', slotId: inOutage(outageId) } })
    expect(moved).toEqual({ moved: ['BH-1', 'BH-2'] })
    const after = await repacks(planId)
    expect(after[1]).toMatchObject({ slotId: inOutage(outageId), reason: 'pinned', pin: { kind: 'in' } })
    expect(after[1]?.chanceOut).toBeGreaterThan(before[1]?.chanceOut ?? 1)
    expect((await repacks((await plan()).planId))[0]).toMatchObject({ slotId: inOutage(outageId), reason: 'pinned' })
  })

  it('is refused by name where it cannot be isolated, and where plan or slot do not know it', async () => {
    const { plan, call } = await withSummerStop()
    const { planId } = await plan()
    for (const [tag, slotId, code, detail] of [
      ['BH-1', 'fortnight:2026-05-18', 'repack/cannot-be-there', 'cannot be isolated while the plant runs'],
      ['BH-3', 'fortnight:2031-05-19', 'repack/no-such-slot', 'fortnight'],
      ['BH-9', 'fortnight:2026-05-18', 'repack/not-in-plan', 'BH-9'],
    ] as const)
      expect(await call('planner', moveRepack, { params: { planId }, body: { tag, slotId } })).toMatchObject({
        problem: { code, detail: expect.stringContaining(detail) },
      })
  })

  it('into a slot whose hours are used is refused with the hours', async () => {
    const { plan, repacks, call, slotId } = await withSummerStop({ hours: { fitting: 6, scaffolding: 0, isolating: 12 } })
    const { planId } = await plan()
    expect((await repacks(planId, { slotId })).map(({ tag }) => tag)).toEqual(['BH-1', 'BH-2', 'BH-6'])
    expect(await call('planner', moveRepack, { params: { planId }, body: { tag: 'BH-3', slotId } })).toMatchObject({
      problem: { code: 'repack/cannot-be-there', detail: '2.0 h of fitting are needed and 0.0 h left' },
    })
  })
})

describe('a question of what if', () => {
  it('says who runs out if the outage slips, with the plan kept and planned anew', async () => {
    const { planInThread, repacks, expectOk, call, outageId, slotId } = await withSummerStop()
    const first = await planInThread()
    await expectOk('planner', takeRepackPlan, { params: { planId: first.planId } })
    const whatIf = { slips: [{ outageId, weeks: 16 }], hoursShare: 1, cordLateDays: 0, oneMoreOutage: null }
    const asked = await planInThread({ name: 'Slipped', whatIf })
    expect(asked).toMatchObject({ basedOn: first.planId, whatIf })
    expect(asked.slots.find((slot) => slot.slotId === slotId)?.likelyOn).toBe('2026-10-26')
    expect(asked.ifKept?.totals.expectedOut).toBeGreaterThan(first.totals.expectedOut + 0.1)
    expect(asked.totals.cost.total).toBeLessThanOrEqual((asked.ifKept?.totals.cost.total ?? 0) + 1e-9)
    const [row] = await repacks(asked.planId, { tag: 'BH-1' })
    const [before] = await repacks(first.planId, { tag: 'BH-1' })
    expect(row?.ifKept).toMatchObject({ slotId })
    expect(row?.ifKept?.chanceOut).toBeGreaterThan(before?.chanceOut ?? 1)
    expect(await call('planner', takeRepackPlan, { params: { planId: asked.planId } })).toMatchObject({
      problem: { code: 'repack/only-a-question' },
    })
    const compared = await expectOk('planner', compareRepackPlans, { params: { planId: first.planId, otherId: asked.planId } })
    expect(compared).toMatchObject({ one: { planId: first.planId }, other: { name: 'Slipped' } })
    expect(compared.same + compared.differenceCount).toBe(6)
  })

  it('with half of the hours and one more outage has both in its slots', async () => {
    const { plan } = await withSummerStop()
    const oneMoreOutage = aStop('One more', '2026-06-08')
    const asked = await plan({ whatIf: { slips: [], hoursShare: 0.5, cordLateDays: 30, oneMoreOutage } })
    const { slots } = asked
    expect(slots.find(({ name }) => name === 'One more')).toMatchObject({ likelyOn: '2026-06-08', hours: { fitting: 20 } })
    expect(slots.find(({ slotId }) => slotId === 'fortnight:2026-05-18')?.hours.fitting).toBe(12)
  })
})

describe('plans', () => {
  it('are all kept; the one taken last is in use and counts for its outages', async () => {
    const { plan, expectOk, call } = await withSummerStop()
    const [one, other] = [await plan({ name: 'One' }), await plan({ name: 'Other', objective: 'money' })]
    expect(other.objective).toBe('money')
    await expectOk('planner', takeRepackPlan, { params: { planId: one.planId } })
    expect(await expectOk('planner', showRepackPlan, { params: { planId: one.planId } })).toMatchObject({
      isInUse: true,
      takenBy: 'The planner',
    })
    const { outages } = await expectOk('fitter', listOutages)
    expect(outages).toMatchObject([{ name: 'Summer stop', repacks: 3 }])
    expect(await call('planner', dropRepackPlan, { params: { planId: one.planId } })).toMatchObject({
      problem: { code: 'repack/plan-in-use' },
    })
    await expectOk('planner', dropRepackPlan, { params: { planId: other.planId } })
    const { plans } = await expectOk('planner', listRepackPlans)
    expect(plans.map(({ name, isInUse }) => [name, isInUse])).toEqual([['One', true]])
  })

  it('that are being made are cancelled, and nothing is left of them', async () => {
    const { expectOk, call, store } = await aPlantToRepack()
    const body = { name: 'Cancelled', weeks: 52, objective: 'chance' as const, whatIf: null, basedOn: null }
    await expectOk('planner', makeRepackPlan, { body })
    expect(await expectOk('planner', cancelRepackPlanning)).toEqual({ wasPlanning: true })
    expect(await expectOk('planner', showRepackPlanning)).toEqual({ share: null, fault: null, planId: null })
    expect([await store.read.repackPlan.count(), await store.read.plannedRepack.count()]).toEqual([0, 0])
    expect(await expectOk('planner', cancelRepackPlanning)).toEqual({ wasPlanning: false })
    expect(await call('fitter', makeRepackPlan, { body })).toMatchObject({ status: 403 })
  })
})
