import { describe, expect, it } from 'vitest'
import { type MonitoringInput, type MonitoringLook, nextMonitoring } from './monitoring.ts'

const rule = {
  everyDays: 28,
  lengthening: [
    { cleanLooks: 2, everyDays: 90 },
    { cleanLooks: 4, everyDays: 181 },
  ],
  difficultEveryDays: 365,
}
const clean = (on: string): MonitoringLook => ({ on, leaks: false })
const leak = (on: string): MonitoringLook => ({ on, leaks: true })

function next(change: Partial<MonitoringInput>) {
  const found = nextMonitoring({ kind: 'ordinary', looks: [], since: '2026-01-01', rule, today: '2026-07-01', ...change })
  if (!found.ok) throw new Error(found.problem.detail)
  return found
}

describe('an ordinary valve', () => {
  it('never looked at is due 28 days after it came under the rule: 29 January', () => {
    expect(next({ today: '2026-01-29' })).toMatchObject({
      dueOn: '2026-01-29',
      everyDays: 28,
      cleanInARow: 0,
      isOverdue: false,
      reason: 'at first',
    })
    expect(next({ today: '2026-01-30' }).isOverdue).toBe(true)
  })

  it('clean once is still at first; clean twice is due in 90 days, four times in 181', () => {
    const looks = [clean('2026-02-01'), clean('2026-03-01'), clean('2026-04-01'), clean('2026-05-01')]
    expect(next({ looks: looks.slice(0, 1) })).toMatchObject({ dueOn: '2026-03-01', reason: 'at first', cleanInARow: 1 })
    expect(next({ looks: looks.slice(0, 2) })).toMatchObject({ dueOn: '2026-05-30', reason: 'after clean looks', everyDays: 90 })
    expect(next({ looks: looks.slice(0, 3) })).toMatchObject({ everyDays: 90, cleanInARow: 3 })
    expect(next({ looks })).toMatchObject({ dueOn: '2026-10-29', reason: 'after clean looks', everyDays: 181 })
  })

  it('goes back to 28 days with a leak, and needs two clean looks anew', () => {
    const leaked = [clean('2026-02-01'), clean('2026-03-01'), leak('2026-04-01')]
    expect(next({ looks: leaked })).toMatchObject({ dueOn: '2026-04-29', reason: 'after a leak', cleanInARow: 0 })
    expect(next({ looks: [...leaked, clean('2026-05-01')] })).toMatchObject({
      everyDays: 28,
      reason: 'after a leak',
      cleanInARow: 1,
    })
    const twice = [...leaked, clean('2026-05-01'), clean('2026-06-01')]
    expect(next({ looks: twice })).toMatchObject({ everyDays: 90, reason: 'after clean looks', cleanInARow: 2 })
  })

  it('takes looks in any order, and of two on one day the later in the list', () => {
    expect(next({ looks: [leak('2026-04-01'), clean('2026-02-01'), clean('2026-03-01')] }).reason).toBe('after a leak')
    expect(next({ looks: [leak('2026-04-01'), clean('2026-04-01')] }).cleanInARow).toBe(1)
    expect(next({ looks: [leak('2026-02-01'), leak('2026-03-01'), clean('2026-04-01')] }).cleanInARow).toBe(1)
    expect(next({ looks: [clean('2026-04-01'), leak('2026-04-01')] }).cleanInARow).toBe(0)
  })

  it('is looked at less often where few of all leak, unless it leaked itself', () => {
    expect(next({ siteEveryDays: 365 })).toMatchObject({ dueOn: '2027-01-01', everyDays: 365, reason: 'by percent leaking' })
    expect(next({ siteEveryDays: 28 }).reason).toBe('at first')
    expect(next({ siteEveryDays: 365, looks: [leak('2026-02-01'), clean('2026-03-01')] })).toMatchObject({
      everyDays: 28,
      reason: 'after a leak',
    })
  })

  it('under a rule without steps is out of its own days after one clean look', () => {
    const plain = { ...rule, lengthening: [] }
    const looks = [leak('2026-02-01'), clean('2026-03-01')]
    expect(next({ rule: plain, looks: looks.slice(0, 1), siteEveryDays: 90 }).everyDays).toBe(28)
    expect(next({ rule: plain, looks, siteEveryDays: 90 })).toMatchObject({ everyDays: 90, reason: 'by percent leaking' })
  })
})

it('a valve that is difficult to monitor is due once a year, whatever was seen', () => {
  const looks = [clean('2026-02-01'), leak('2026-03-01')]
  expect(next({ kind: 'difficult', looks, siteEveryDays: 28 })).toMatchObject({
    dueOn: '2027-03-01',
    everyDays: 365,
    reason: 'difficult to monitor',
  })
})

it('a valve that is unsafe to monitor has no day, and is never overdue', () => {
  expect(next({ kind: 'unsafe', today: '2036-01-01' })).toMatchObject({
    dueOn: null,
    everyDays: null,
    isOverdue: false,
    reason: 'unsafe to monitor',
  })
})

it.each<[string, Partial<MonitoringInput>, string, string]>([
  ['no day for today', { today: '2026-06-31' }, 'monitoring/not-a-day', 'today'],
  ['no day to begin from', { since: '' }, 'monitoring/not-a-day', 'since'],
  ['a look on no day', { looks: [clean('2026-1-1')] }, 'monitoring/not-a-day', 'looks'],
  ['a look of tomorrow', { looks: [clean('2026-07-02')] }, 'monitoring/after-today', 'looks'],
  ['half days', { siteEveryDays: 0.5 }, 'rule/not-days', 'siteEveryDays'],
  ['a rule that shortens', { rule: { ...rule, everyDays: 100 } }, 'rule/not-lengthening', 'lengthening'],
])('refuses %s', (_, change, code, field) => {
  const found = nextMonitoring({ kind: 'ordinary', looks: [], since: '2026-01-01', rule, today: '2026-07-01', ...change })
  expect(found).toMatchObject({ ok: false, problem: { code, field } })
})
