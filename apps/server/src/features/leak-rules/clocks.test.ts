import { type FieldEvent, sendEvents } from '@glandkeeper/contract/events'
import { addLeakRule, monitorValves, showRegulated } from '@glandkeeper/contract/leak-rules'
import { retireValve } from '@glandkeeper/contract/valves'
import { aCorrection, aDeferral, aLeak, aNip, aReading, aTreatment } from '@glandkeeper/fixtures/a-reading'
import { describe, expect, it, vi } from 'vitest'
import { aServer } from '../../../testing/a-server.ts'
import { add } from '../../../testing/valves-alike.ts'
import { examplesOffered } from './index.ts'

/** Judged in the background: how long a busy machine may take. */
const SOON = { timeout: 15_000 }

/** Valves BH-1 and BH-2 under a rule of 5 and 15 days; the clock moves on when it is told to. */
async function aPlantUnderRule(startsAt: string, since = '2025-01-01') {
  let now = new Date(startsAt)
  const server = await aServer({ clock: () => now })
  const { rule, paragraph } = examplesOffered[0]!
  const { ruleId } = await server.expectOk('engineer', addLeakRule, { body: { rule, exampleOf: paragraph } })
  const ids = [await add(server, { tag: 'BH-1' }), await add(server, { tag: 'BH-2' })].map(({ valveId }) => valveId)
  const body = { tags: ['BH-1', 'BH-2'], ruleId, kind: 'ordinary' as const, note: '', since }
  await server.expectOk('engineer', monitorValves, { body })
  await vi.waitFor(
    async () => expect(await server.store.read.valveMonitoring.count({ where: { judgedFrom: 10_000 } })).toBe(2),
    SOON,
  )
  const send = (...events: FieldEvent[]) => server.expectOk('fitter', sendEvents, { body: { events } })
  const leaks = async () => (await server.expectOk('fitter', showRegulated, { params: { ruleId }, query: {} })).leaks
  const setNow = (moment: string) => (now = new Date(moment))
  return { ...server, valveId: ids[0]!, otherId: ids[1]!, send, leaks, setNow }
}

const metered = (valveId: string, takenAt: string, screeningValue: number) =>
  aLeak({ valveId, takenAt, leak: 'dry', screeningValue, background: 4, instrument: 'meter M2' })

describe('the clocks of a leak', () => {
  // 20 February and 5 days: the 25th; and 15 days, February has 28: 7 March (40 CFR 61.242-7).
  it('found on 20 February 2025 asks for an attempt by 25 February and a repair by 7 March', async () => {
    const { valveId, send, leaks, setNow } = await aPlantUnderRule('2025-02-20T12:00:00Z')
    await send(metered(valveId, '2025-02-20T09:00:00Z', 12_000))
    const days = {
      tag: 'BH-1',
      detectedOn: '2025-02-20',
      firstAttemptBy: '2025-02-25',
      repairBy: '2025-03-07',
      worstScreening: 11_996,
    }
    setNow('2025-02-25T23:59:00Z')
    expect(await leaks()).toMatchObject([{ ...days, attempt: 'due', repair: 'due', daysLeft: 10, firstAttemptOn: null }])
    setNow('2025-02-26T00:01:00Z')
    expect(await leaks()).toMatchObject([{ ...days, attempt: 'overdue', repair: 'due', daysLeft: 9 }])
    await send(aTreatment({ valveId, takenAt: '2025-02-26T00:00:30Z', leakBefore: undefined, leakAfter: undefined }))
    expect(await leaks()).toMatchObject([{ attempt: 'made late', firstAttemptOn: '2025-02-26', repairedOn: null }])
    setNow('2025-03-08T09:00:00Z')
    expect(await leaks()).toMatchObject([{ ...days, repair: 'overdue', daysLeft: -1 }])
    await send(metered(valveId, '2025-03-08T08:00:00Z', 40))
    expect(await leaks()).toMatchObject([{ ...days, repair: 'verified late', repairedOn: '2025-03-08', daysLeft: -1 }])
  })

  it('run by the calendar of the site: half an hour before midnight by UTC is the next day there in summer', async () => {
    const { valveId, send, leaks } = await aPlantUnderRule('2025-07-17T12:00:00Z')
    await send(
      metered(valveId, '2025-07-10T23:30:00Z', 12_000),
      // Half past eleven in the evening of the 16th there.
      aNip({ valveId, takenAt: '2025-07-16T22:30:00Z', leakBefore: undefined, leakAfter: undefined }),
      // Past midnight of the 17th.
      metered(valveId, '2025-07-16T23:30:00Z', 20),
    )
    expect(await leaks()).toMatchObject([
      {
        detectedOn: '2025-07-11',
        firstAttemptBy: '2025-07-16',
        firstAttemptOn: '2025-07-16',
        attempt: 'made',
        repairBy: '2025-07-26',
        repairedOn: '2025-07-17',
        repair: 'verified',
        daysLeft: 9,
      },
    ])
  })

  it('that came back start again on the day it did; what was tried and decided before is of the time before', async () => {
    const { valveId, send, leaks } = await aPlantUnderRule('2025-03-20T12:00:00Z')
    await send(
      metered(valveId, '2025-02-20T09:00:00Z', 12_000),
      aTreatment({ valveId, takenAt: '2025-02-21T09:00:00Z', leakBefore: undefined, leakAfter: undefined }),
      aDeferral({ valveId, takenAt: '2025-02-22T09:00:00Z', until: '2025-06-01' }),
      metered(valveId, '2025-02-24T09:00:00Z', 30),
      metered(valveId, '2025-03-14T09:00:00Z', 15_000),
    )
    const again = { detectedOn: '2025-03-14', firstAttemptBy: '2025-03-19', attempt: 'overdue', firstAttemptOn: null }
    expect(await leaks()).toMatchObject([{ ...again, repair: 'due', daysLeft: 9, deferral: null }])
    await send(aNip({ valveId, takenAt: '2025-03-16T09:00:00Z', leakBefore: undefined, leakAfter: undefined }))
    expect(await leaks()).toMatchObject([{ attempt: 'made', firstAttemptOn: '2025-03-16' }])
  })

  it('that was put off run to its day, with the reason and who allowed it, whoever wrote it down', async () => {
    const { valveId, send, leaks, setNow } = await aPlantUnderRule('2025-03-10T12:00:00Z')
    const deferral = aDeferral({
      valveId,
      takenAt: '2025-02-22T09:00:00Z',
      until: '2025-04-01',
      approvedBy: 'The fitter himself',
    })
    await send(metered(valveId, '2025-02-20T09:00:00Z', 12_000), deferral)
    const told = { reason: 'needs a shutdown', approvedBy: 'The fitter himself', until: '2025-04-01' }
    expect(await leaks()).toMatchObject([{ repair: 'put off', daysLeft: 22, deferral: told }])
    setNow('2025-04-02T12:00:00Z')
    expect(await leaks()).toMatchObject([{ repair: 'put off, past its day', daysLeft: -1 }])
    const withoutDay = {
      kind: 'repair.deferred',
      takenAt: deferral.takenAt,
      reason: 'part on order',
      approvedBy: 'P. Hale',
    } as const
    const correction = { corrects: deferral.id, reason: 'no day was set', replacement: withoutDay }
    await send(aCorrection({ valveId, takenAt: '2025-04-02T08:00:00Z', ...correction }))
    // Twenty-six days past 7 March, the day of the rule.
    expect(await leaks()).toMatchObject([
      { repair: 'put off', daysLeft: -26, deferral: { reason: 'part on order', approvedBy: 'P. Hale', until: null } },
    ])
  })
})

describe('the leaks of a rule', () => {
  it('are those not seen gone, what is due first on top, and those seen gone within a year', async () => {
    const { valveId, otherId, send, leaks } = await aPlantUnderRule('2025-03-10T12:00:00Z', '2024-01-01')
    await send(
      metered(valveId, '2024-02-01T09:00:00Z', 12_000),
      metered(valveId, '2024-03-09T09:00:00Z', 12),
      metered(otherId, '2024-03-02T09:00:00Z', 12_000),
      metered(otherId, '2024-03-12T09:00:00Z', 12),
      metered(valveId, '2025-03-09T09:00:00Z', 12_000),
      aLeak({ valveId: otherId, takenAt: '2025-03-01T09:00:00Z', leak: 'drip' }),
    )
    expect((await leaks()).map(({ tag, repair, daysLeft }) => [tag, repair, daysLeft])).toEqual([
      ['BH-2', 'due', 6],
      ['BH-1', 'due', 14],
      ['BH-2', 'verified', 5],
    ])
  })

  it('leave out what was seen gone before the rule held, and what is open at a valve that is gone', async () => {
    const { valveId, otherId, send, leaks, expectOk } = await aPlantUnderRule('2025-03-10T12:00:00Z', '2025-03-01')
    await send(
      aLeak({ valveId, takenAt: '2025-02-10T09:00:00Z', leak: 'drip' }),
      aReading({ valveId, takenAt: '2025-02-11T09:00:00Z', leak: 'dry' }),
      aLeak({ valveId: otherId, takenAt: '2025-02-10T09:00:00Z', leak: 'drip' }),
    )
    expect((await leaks()).map(({ tag, detectedOn }) => [tag, detectedOn])).toEqual([['BH-2', '2025-02-10']])
    await expectOk('planner', retireValve, { params: { tag: 'BH-2' }, body: { revision: 1, reason: 'gone' } })
    expect(await leaks()).toEqual([])
  })

  it('hold no surprise where a device is ahead of its time or a day was mistyped', async () => {
    const { valveId, send, leaks } = await aPlantUnderRule('2025-03-10T12:00:00Z')
    await send(
      metered(valveId, '2025-03-11T09:00:00Z', 12_000),
      aDeferral({ valveId, takenAt: '2025-03-11T10:00:00Z', until: '9025-04-01' }),
    )
    expect(await leaks()).toMatchObject([{ detectedOn: '2025-03-10', repair: 'put off', deferral: { until: '9025-04-01' } }])
  })
})

it('a meter at the end of its range leaks by that end, whatever the background; nobody saw it', async () => {
  const { valveId, otherId, send, leaks } = await aPlantUnderRule('2025-02-20T12:00:00Z')
  const shown = { takenAt: '2025-02-20T09:00:00Z', leak: 'dry', screeningValue: 10_000, background: 4 } as const
  await send(aLeak({ valveId, ...shown, isPegged: true }), aLeak({ valveId: otherId, ...shown }))
  expect(await leaks()).toMatchObject([{ tag: 'BH-1', worst: null, worstScreening: 10_000 }])
})
