import { addArea } from '@glandkeeper/contract/areas'
import { type FieldEvent, sendEvents } from '@glandkeeper/contract/events'
import {
  addLeakRule,
  type LeakRuleInput,
  monitorValves,
  type MonitoringKind,
  showRegulated,
} from '@glandkeeper/contract/leak-rules'
import { retireValve } from '@glandkeeper/contract/valves'
import { aCorrection, aLeak, aReading } from '@glandkeeper/fixtures/a-reading'
import type { Plain } from '@glandkeeper/fixtures/demo-plant/rows'
import { describe, expect, it } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { add } from '../../../testing/valves-alike.ts'
import { examplesOffered } from './index.ts'

/** A plant on 4 May 2026 with a rule: every 28 days, and every 90 after two clean looks, unless told otherwise. */
async function aPlantUnderRule(changed: Partial<Plain<LeakRuleInput>> = {}) {
  const server = await aServer()
  const rule = { ...examplesOffered[0]!.rule, ...changed }
  const { ruleId } = await server.expectOk('engineer', addLeakRule, { body: { rule, exampleOf: null } })
  const monitored = async (
    tag: string,
    more: { kind?: MonitoringKind; since?: string; walkPosition?: number; areaCode?: string } = {},
  ) => {
    const { kind = 'ordinary', since = '2024-01-01', walkPosition = 10, areaCode = 'BH' } = more
    const { valveId } = await add(server, { tag, walkPosition, areaCode })
    await server.expectOk('engineer', monitorValves, { body: { tags: [tag], ruleId, kind, note: `note of ${tag}`, since } })
    return valveId
  }
  const send = (...events: FieldEvent[]) => server.expectOk('fitter', sendEvents, { body: { events } })
  const shown = (lookAhead = 31) =>
    server.expectOk('fitter', showRegulated, { params: { ruleId }, query: { lookAhead: String(lookAhead) } })
  return { ...server, monitored, send, shown }
}

const look = (valveId: string, day: string, screeningValue = 12) =>
  aLeak({ valveId, takenAt: `${day}T09:00:00Z`, leak: 'dry', screeningValue, background: 2 })

describe('the next looks with a meter', () => {
  it('come after the days of the rule, longer after clean looks, and are overdue from the day after', async () => {
    const { monitored, send, shown } = await aPlantUnderRule()
    const [first, clean, late] = [await monitored('BH-1'), await monitored('BH-2'), await monitored('BH-3')]
    await monitored('BH-4', { since: '2026-04-20' })
    await send(
      look(first, '2026-03-01', 20_000),
      look(first, '2026-04-10'),
      look(clean, '2026-02-01'),
      look(clean, '2026-02-25'),
      look(late, '2026-04-05'),
    )
    const { looks } = await shown()
    expect(looks.map(({ tag, dueOn, isOverdue, everyDays, reason }) => ({ tag, dueOn, isOverdue, everyDays, reason }))).toEqual([
      {
        tag: 'BH-1',
        dueOn: '2026-05-08',
        isOverdue: false,
        everyDays: 28,
        reason: 'it leaked, and has not been clean often enough since',
      },
      { tag: 'BH-2', dueOn: '2026-05-26', isOverdue: false, everyDays: 90, reason: '2 clean looks in a row' },
      { tag: 'BH-3', dueOn: '2026-05-03', isOverdue: true, everyDays: 28, reason: 'as the rule begins' },
      { tag: 'BH-4', dueOn: '2026-05-18', isOverdue: false, everyDays: 28, reason: 'as the rule begins' },
    ])
    expect(looks[1]).toMatchObject({ lastOn: '2026-02-25', lastNet: 10, cleanInARow: 2, note: 'note of BH-2' })
    expect((await shown(4)).looks.map(({ tag }) => tag)).toEqual(['BH-1', 'BH-3'])
    expect((await shown(3)).looks.map(({ tag }) => tag)).toEqual(['BH-3'])
  })

  it('count every clean look, however many a step asks for', async () => {
    const { monitored, send, shown } = await aPlantUnderRule({ lengthening: [] })
    const valveId = await monitored('BH-1')
    await send(
      look(valveId, '2026-01-01', 20_000),
      ...['02', '03', '04', '05', '06'].map((day) => look(valveId, `2026-04-${day}`)),
    )
    expect((await shown()).looks).toMatchObject([{ cleanInARow: 5, everyDays: 28, reason: '5 clean looks in a row' }])
  })

  it('follow from looks of long ago too, where there are no later ones', async () => {
    const { monitored, send, shown } = await aPlantUnderRule({
      everyDays: 800,
      lengthening: [{ cleanLooks: 3, everyDays: 1200 }],
    })
    const [once, often] = [await monitored('BH-1', { since: '2020-01-01' }), await monitored('BH-2', { since: '2020-01-01' })]
    await send(look(once, '2024-03-01'), look(often, '2020-05-01'), look(often, '2021-05-01'), look(often, '2025-05-01'))
    expect((await shown(400)).looks).toMatchObject([{ lastOn: '2024-03-01', dueOn: '2026-05-10' }])
    await send(look(often, '2024-05-01', 20_000))
    // Now it has leaked, and clean once since: 800 days after the look of 2025 is beyond what is shown.
    expect((await shown(400)).looks.map(({ tag }) => tag)).toEqual(['BH-1'])
  })

  it('stand in walking order, area after area; who is unsafe stands apart, who is retired nowhere', async () => {
    const { monitored, shown, expectOk } = await aPlantUnderRule()
    await expectOk('planner', addArea, { body: { code: 'AA', name: 'Last on the way', walkPosition: 99, level: 0 } })
    await monitored('AA-1', { areaCode: 'AA' })
    await monitored('BH-9', { walkPosition: 1 })
    await monitored('BH-1', { walkPosition: 2 })
    await monitored('BH-2', { walkPosition: 3, kind: 'difficult', since: '2025-05-10' })
    await monitored('BH-3', { walkPosition: 4, kind: 'unsafe' })
    await monitored('BH-4', { walkPosition: 5 })
    await expectOk('planner', retireValve, { params: { tag: 'BH-4' }, body: { revision: 1, reason: 'gone' } })
    const { looks, unsafe } = await shown()
    expect(looks.map(({ tag }) => tag)).toEqual(['BH-9', 'BH-1', 'BH-2', 'AA-1'])
    expect(looks[2]).toMatchObject({ everyDays: 365, dueOn: '2026-05-10', reason: 'difficult to monitor' })
    expect(unsafe).toMatchObject([{ tag: 'BH-3', dueOn: null, isOverdue: false, note: 'note of BH-3' }])
  })

  it('follow from looks with a meter as they stand, since the valve came under the rule', async () => {
    const { monitored, send, shown } = await aPlantUnderRule()
    const valveId = await monitored('BH-1', { since: '2026-03-01' })
    const [wrong, empty] = [look(valveId, '2026-05-02'), aReading({ valveId, takenAt: '2026-04-20T09:00:00Z' })]
    const asLook = { kind: 'leak.seen', takenAt: empty.takenAt, leak: 'dry', screeningValue: 30 as never } as const
    const corrected = { valveId, takenAt: '2026-05-03T09:00:00Z' }
    await send(
      look(valveId, '2026-02-01'),
      look(valveId, '2026-04-10'),
      aLeak({ valveId, takenAt: '2026-05-01T09:00:00Z' }),
      wrong,
      empty,
    )
    const last = async () => (await shown(400)).looks.map(({ lastOn, cleanInARow }) => [lastOn, cleanInARow])
    expect(await last()).toEqual([['2026-05-02', 2]])
    await send(aCorrection({ ...corrected, corrects: wrong.id, replacement: null, reason: 'wrong valve' }))
    expect(await last()).toEqual([['2026-04-10', 1]])
    await send(aCorrection({ ...corrected, corrects: empty.id, replacement: asLook, reason: 'it was the meter', count: 2 }))
    expect(await last()).toEqual([['2026-04-20', 2]])
  })
})

describe('percent leaking', () => {
  it('counts who leaked to the meter among who was monitored, quarter by quarter, and says who is left out', async () => {
    const { monitored, send, shown, expectOk } = await aPlantUnderRule({ percentAllowed: 2 })
    const [one, two, three] = [await monitored('BH-1'), await monitored('BH-2'), await monitored('BH-3')]
    const unsafe = await monitored('BH-4', { kind: 'unsafe' })
    const gone = await monitored('BH-5')
    await monitored('BH-6')
    await send(
      ...[one, two, three, unsafe, gone].map((valveId) => look(valveId, '2025-12-31', valveId === gone ? 20_000 : 12)),
      // The last evening of a quarter by the site's clock is the next day by UTC, and summer time the other way round.
      aLeak({ valveId: one, takenAt: '2026-03-31T23:30:00Z', leak: 'dry', screeningValue: 20_000 }),
      look(one, '2026-04-20'),
      look(two, '2026-04-02'),
      // Seen by eye, and not by a meter.
      aLeak({ valveId: three, takenAt: '2026-04-02T09:00:00Z', leak: 'run' }),
    )
    await expectOk('planner', retireValve, { params: { tag: 'BH-5' }, body: { revision: 1, reason: 'gone' } })
    const { percent } = await shown()
    expect(percent).toMatchObject({ numerator: 1, denominator: 2, percent: 50, allowed: 2, isAbove: true })
    // Exact limits of 1 of 2: 1 - sqrt(0.975) and sqrt(0.975).
    expect(percent.lower).toBeCloseTo(100 * (1 - Math.sqrt(0.975)), 6)
    expect(percent.upper).toBeCloseTo(100 * Math.sqrt(0.975), 6)
    expect(percent.excluded).toEqual([
      { why: 'unsafe to monitor', valves: 1 },
      { why: 'not yet monitored in this quarter', valves: 2 },
      { why: 'retired', valves: 1 },
    ])
    expect(percent.course.map(({ period }) => period)).toEqual([
      '2024 Q3',
      '2024 Q4',
      '2025 Q1',
      '2025 Q2',
      '2025 Q3',
      '2025 Q4',
      '2026 Q1',
      '2026 Q2',
    ])
    expect(percent.course.slice(-3)).toEqual([
      { period: '2025 Q4', numerator: 1, denominator: 4, percent: 25 },
      { period: '2026 Q1', numerator: 0, denominator: 0, percent: null },
      { period: '2026 Q2', numerator: 1, denominator: 2, percent: 50 },
    ])
  })

  it('brings longer times between looks after good quarters, and ends them in the quarter that runs', async () => {
    const byPercent = [{ atMostPercent: 2 as never, afterPeriods: 2, everyDays: 181 }]
    const { monitored, send, shown } = await aPlantUnderRule({ byPercent, lengthening: [] })
    const [one, two] = [await monitored('BH-1'), await monitored('BH-2')]
    const every = async () => (await shown(400)).looks.map(({ everyDays }) => everyDays)
    await send(look(one, '2025-11-10'), look(two, '2025-11-10'))
    // A quarter that runs is no good quarter yet.
    await send(look(one, '2026-04-10'))
    expect(await every()).toEqual([28, 28])
    await send(look(one, '2026-02-10'))
    expect((await shown(400)).looks[0]).toMatchObject({ everyDays: 181, reason: 'few of all valves leak' })
    await send(look(two, '2026-05-02', 20_000))
    expect(await every()).toEqual([28, 28])
  })

  it('counts a meter at the end of its range by that end, as the clocks do', async () => {
    const { monitored, send, shown } = await aPlantUnderRule({ percentAllowed: 2 })
    const pegged = { takenAt: '2026-04-10T08:00:00Z', leak: 'dry', screeningValue: 10_000, background: 4 } as const
    await send(
      aLeak({ valveId: await monitored('BH-1'), ...pegged, isPegged: true }),
      aLeak({ valveId: await monitored('BH-2'), ...pegged }),
    )
    expect((await shown()).percent).toMatchObject({ numerator: 1, denominator: 2 })
  })

  it('at its limit is above it where the rule says that the percentage itself is', async () => {
    for (const percentItselfIsAbove of [true, false]) {
      const { monitored, send, shown } = await aPlantUnderRule({
        percentAllowed: 50 as never,
        leastValves: 0,
        percentItselfIsAbove,
      })
      await send(look(await monitored('BH-1'), '2026-04-10', 20_000), look(await monitored('BH-2'), '2026-04-10'))
      expect((await shown()).percent).toMatchObject({ percent: 50, isAbove: percentItselfIsAbove })
    }
  })
})
