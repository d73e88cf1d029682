import { addLeakRule, changeLeakRule, listLeakRules, monitorValves } from '@glandkeeper/contract/leak-rules'
import { listLeaks } from '@glandkeeper/contract/leaks'
import { sendEvents } from '@glandkeeper/contract/events'
import { retireValve } from '@glandkeeper/contract/valves'
import { aLeak } from '@glandkeeper/fixtures/a-reading'
import { describe, expect, it, vi } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { add } from '../../../testing/valves-alike.ts'
import { examplesOffered } from './index.ts'

/** Judged in the background: how long a busy machine may take. */
const SOON = { timeout: 15_000 }

const [monthly] = examplesOffered
const rule = { ...monthly!.rule, name: 'Gas valves' }
const since = '2026-01-01'

async function aServerWithRule() {
  const server = await aServer()
  const { ruleId } = await server.expectOk('engineer', addLeakRule, { body: { rule, exampleOf: monthly!.paragraph } })
  const monitor = (tags: string[], more: { ruleId?: string | null; kind?: 'difficult' | 'unsafe'; note?: string } = {}) =>
    server.call('planner', monitorValves, { body: { tags, ruleId, kind: 'ordinary', note: '', since, ...more } })
  const change = (changed: object, revision = 1) =>
    server.call('engineer', changeLeakRule, { params: { ruleId }, body: { revision, rule: { ...rule, ...changed } } })
  const notes = async (subject: string) => {
    const rows = await server.store.read.registerChange.findMany({ where: { subject }, orderBy: { id: 'asc' } })
    return rows.map(({ what, subjectId, before, after }) => ({
      what,
      subjectId,
      before: JSON.parse(before) as object,
      after: JSON.parse(after) as object,
    }))
  }
  return { ...server, ruleId, monitor, change, notes }
}

it('every example names its paragraph and its mark, and says which of its figures are from memory', async () => {
  const server = await aServer()
  const { rules, examples } = await server.expectOk('fitter', listLeakRules)
  expect(rules).toEqual([])
  expect(examples.map(({ paragraph }) => paragraph)).toContain('40 CFR 61.242-7')
  expect(examples[0]).toMatchObject({
    mark: 'read',
    rule: { leakFrom: 10_000, firstAttemptDays: 5, repairDays: 15, everyDays: 28 },
  })
  expect(examples[0]?.what).toMatch(/From memory: days between looks at valves difficult to monitor\.$/)
})

it('any example can be added as it is', async () => {
  const server = await aServer()
  for (const { rule: example, paragraph } of examplesOffered)
    await server.expectOk('planner', addLeakRule, { body: { rule: example, exampleOf: paragraph } })
  expect((await server.expectOk('fitter', listLeakRules)).rules).toHaveLength(examplesOffered.length)
})

describe('a rule', () => {
  it('is added and changed by revision, and the log has before and after in words', async () => {
    const { ruleId, change, notes } = await aServerWithRule()
    expect(await change({ everyDays: 30, lengthening: [] })).toMatchObject({
      value: { ruleId, name: 'Gas valves', everyDays: 30, revision: 2, exampleOf: '40 CFR 61.242-7' },
    })
    expect(await change({ everyDays: 60 })).toMatchObject({ status: 409, problem: { code: 'rule/changed-meanwhile' } })
    expect(await notes('leak rule')).toMatchObject([
      { what: 'leak rule added', subjectId: ruleId, before: {}, after: { lengthening: 'every 90 days after 2 clean looks' } },
      {
        what: 'leak rule changed',
        before: { everyDays: 28, lengthening: 'every 90 days after 2 clean looks' },
        after: { everyDays: 30, lengthening: '' },
      },
    ])
  })

  const step = (atMostPercent: number, afterPeriods: number, everyDays: number) => ({ atMostPercent, afterPeriods, everyDays })
  it.each([
    ['repair due before the attempt', { repairDays: 3 }, 'repairDays'],
    [
      'fewer clean looks after more',
      {
        lengthening: [
          { cleanLooks: 3, everyDays: 60 },
          { cleanLooks: 2, everyDays: 90 },
        ],
      },
      'lengthening',
    ],
    [
      'nearer after more clean looks',
      {
        lengthening: [
          { cleanLooks: 2, everyDays: 90 },
          { cleanLooks: 4, everyDays: 60 },
        ],
      },
      'lengthening',
    ],
    ['nearer for less leaking', { byPercent: [step(2, 2, 181), step(1, 2, 90)] }, 'byPercent'],
    ['nearer for longer', { byPercent: [step(2, 2, 181), step(2, 5, 90)] }, 'byPercent'],
    ['nearer than it begins', { byPercent: [step(2, 2, 7)] }, 'byPercent'],
  ])('that contradicts itself is refused where it does: %s', async (_, changed, field) => {
    const { change, expectOk } = await aServerWithRule()
    const answer = await change(changed)
    expect(answer).toMatchObject({ problem: { code: 'rule/not-in-order', errors: [{ pointer: `#/rule/${field}` }] } })
    expect((await expectOk('fitter', listLeakRules)).rules).toMatchObject([{ revision: 1 }])
  })

  it('under which everything leaks is none', async () => {
    const { change } = await aServerWithRule()
    expect(await change({ leakFrom: 0 })).toMatchObject({
      problem: { code: 'request/invalid', errors: [{ pointer: '#/rule/leakFrom' }] },
    })
  })

  it('of another site is not known here', async () => {
    const { ruleId, store, now, change } = await aServerWithRule()
    await store.write(async (write) => {
      await write.site.create({ data: { id: 'other', name: 'Other', timeZone: 'Europe/London', createdAt: now } })
      await write.leakRule.update({ where: { id: ruleId }, data: { siteId: 'other' } })
    })
    expect(await change({})).toMatchObject({ status: 404, problem: { code: 'rule/unknown' } })
  })
})

describe('valves under a rule', () => {
  it('are counted once each, without retired ones, and each stands in the log', async () => {
    const server = await aServerWithRule()
    const { monitor, ruleId, notes, expectOk } = server
    const [one] = [await add(server, { tag: 'BH-1' }), await add(server, { tag: 'BH-2' }), await add(server, { tag: 'BH-3' })]
    expect(await monitor(['BH-1', 'BH-2', 'BH-1', 'BH-3'])).toMatchObject({ value: { valves: 3 } })
    await monitor(['BH-1'], { kind: 'unsafe', note: 'Beside the burner' })
    await expectOk('planner', retireValve, { params: { tag: 'BH-3' }, body: { revision: 1, reason: 'gone' } })
    expect((await expectOk('fitter', listLeakRules)).rules).toMatchObject([{ valves: 2 }])
    expect(await monitor(['BH-1'], { ruleId: null })).toMatchObject({ value: { valves: 1 } })
    expect(await monitor(['BH-1'], { ruleId: null })).toMatchObject({ value: { valves: 0 } })
    expect((await expectOk('fitter', listLeakRules)).rules).toMatchObject([{ valves: 1 }])
    const own = (await notes('monitoring')).filter(({ subjectId }) => subjectId === one?.valveId)
    expect(own).toMatchObject([
      { what: 'put under a leak rule', before: {}, after: { rule: 'Gas valves', kind: 'ordinary', since } },
      { before: { kind: 'ordinary', rule: 'Gas valves' }, after: { kind: 'unsafe', note: 'Beside the burner' } },
      { what: 'taken out of its leak rule', before: { rule: 'Gas valves' }, after: { rule: 'none' } },
    ])
    expect(await server.store.read.valveMonitoring.findMany({ where: { ruleId } })).toHaveLength(2)
  })

  it('that nobody knows are named, and then none is put under it', async () => {
    const server = await aServerWithRule()
    await add(server, { tag: 'BH-1' })
    expect(await server.monitor(['BH-1', 'BH-7', 'BH-8'])).toMatchObject({
      status: 404,
      problem: { code: 'valve/unknown', detail: 'BH-7, BH-8' },
    })
    expect(await server.store.read.valveMonitoring.count()).toBe(0)
    expect(await server.notes('monitoring')).toEqual([])
  })

  it('have their leaks judged by it from then on, and again when it changes or they leave it', async () => {
    const server = await aServerWithRule()
    const { monitor, change, expectOk } = server
    const { valveId } = await add(server, { tag: 'BH-1' })
    const seen = aLeak({ valveId, takenAt: '2026-04-01T08:00:00Z', leak: 'dry', screeningValue: 2000, background: 3 })
    await expectOk('fitter', sendEvents, { body: { events: [seen] } })
    const leaks = async () => (await expectOk('fitter', listLeaks)).total
    await monitor(['BH-1'])
    await vi.waitFor(async () => expect((await server.store.read.valveMonitoring.findFirst())?.judgedFrom).toBe(10_000), SOON)
    expect(await leaks()).toBe(0)
    await change({ leakFrom: 500 })
    await vi.waitFor(async () => expect(await leaks()).toBe(1), SOON)
    await monitor(['BH-1'], { ruleId: null })
    await vi.waitFor(async () => expect(await leaks()).toBe(0), SOON)
  })
})
