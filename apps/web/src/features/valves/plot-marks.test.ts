import { TimelineEntry } from '@glandkeeper/contract/events'
import { expect, test } from 'vitest'
import { leakMarks, nipTicks } from './plot-marks.ts'
import { plotFrame } from './reserve-geometry.ts'
import { standingFacts, timelineRows } from './standing-facts.ts'

const id = (n: number) => `01890000-0000-7000-8000-${String(n).padStart(12, '0')}`
const takenAt = '2026-03-01T09:00:00Z'
const entry = (n: number, body: Record<string, unknown>, standsAs: TimelineEntry['standsAs'] = 'as entered') =>
  TimelineEntry.parse({
    event: { id: id(n), version: 1, valveId: id(999), device: 'phone 3', takenAt, ...body },
    receivedAt: takenAt,
    by: 'R. Oakes',
    device: 'phone 3',
    position: n,
    says: 'in words',
    reserveAfter: null,
    findings: [],
    standsAs,
  })
const nip = (n: number, left: number, right = left) => entry(n, { kind: 'gland.nipped', turnsLeft: left, turnsRight: right })
const frame = plotFrame({
  points: [],
  lives: [],
  state: { reserve: null, forecast: null, standing: 'watch' },
  now: new Date('2026-05-04T10:00:00Z'),
  timeZone: 'Europe/London',
  plannedStopOn: null,
  width: 592,
})

test('a nip of one turn draws two ticks, of half a turn one', () => {
  expect(nipTicks([nip(1, 1)], frame)).toHaveLength(2)
  expect(nipTicks([nip(1, 0.5)], frame)).toHaveLength(1)
})

test('a quarter turn is half as high as a half turn', () => {
  const [quarter] = nipTicks([nip(1, 0.25)], frame)
  const [half] = nipTicks([nip(1, 0.5)], frame)
  expect((quarter?.from ?? 0) - (quarter?.to ?? 0)).toBe(((half?.from ?? 0) - (half?.to ?? 0)) / 2)
})

test('slackened nuts are drawn below the line', () => {
  const [tick] = nipTicks([nip(1, -0.5)], frame)
  expect(tick?.to).toBeGreaterThan(frame.nipLine)
})

test('a nip taken back draws nothing and a corrected one draws what it was put right to', () => {
  const takenBack = [
    entry(1, { kind: 'gland.nipped', turnsLeft: 5, turnsRight: 5 }, 'taken back'),
    entry(2, { kind: 'fact.corrected', corrects: id(1), reason: 'taken back at once', replacement: null }, 'correction'),
  ]
  expect(nipTicks(takenBack, frame)).toHaveLength(0)
  const replacement = { kind: 'gland.nipped', takenAt, turnsLeft: 0.5, turnsRight: 0.5 }
  const corrected = [
    entry(1, { kind: 'gland.nipped', turnsLeft: 5, turnsRight: 5 }, 'corrected'),
    entry(2, { kind: 'fact.corrected', corrects: id(1), reason: 'point forgotten', replacement }, 'correction'),
  ]
  expect(nipTicks(corrected, frame)).toHaveLength(1)
})

test('of two corrections of one entry the later holds, and both stand beside it', () => {
  const put = (turns: number) => ({ kind: 'gland.nipped', takenAt, turnsLeft: turns, turnsRight: turns })
  const timeline = [
    entry(
      3,
      { kind: 'fact.corrected', corrects: id(1), reason: 'again', replacement: put(0.25), takenAt: '2026-03-03T09:00:00Z' },
      'correction',
    ),
    entry(
      2,
      { kind: 'fact.corrected', corrects: id(1), reason: 'first', replacement: put(1), takenAt: '2026-03-02T09:00:00Z' },
      'correction',
    ),
    entry(1, { kind: 'gland.nipped', turnsLeft: 5, turnsRight: 5 }, 'corrected'),
  ]
  expect(standingFacts(timeline)).toMatchObject([{ kind: 'gland.nipped', turnsLeft: 0.25 }])
  expect(timelineRows(timeline).map(({ corrections }) => corrections.map(({ position }) => position))).toEqual([[2, 3]])
})

test('a drop is the higher the worse the leak, damp is no drop and dry nothing', () => {
  const marks = leakMarks(
    ['dry', 'damp', 'weep', 'drip', 'run'].map((leak, n) => entry(n + 1, { kind: 'leak.seen', leak })),
    frame,
  )
  expect(marks.map(({ grade }) => grade)).toEqual(['damp', 'weep', 'drip', 'run'])
  expect(marks.map(({ height }) => height)).toEqual([0, 13, 26, 39])
})

test('a leak told with a nip is on the plot too', () => {
  const marks = leakMarks(
    [entry(1, { kind: 'gland.nipped', turnsLeft: 0.5, turnsRight: 0.5, leakBefore: 'drip', leakAfter: 'dry' })],
    frame,
  )
  expect(marks.map(({ grade }) => grade)).toEqual(['drip'])
})

test('a leak told with a treatment is on the plot too', () => {
  const treated = { kind: 'leak.treated', treatment: 'stem cleaned', leakBefore: 'weep', leakAfter: 'run' }
  expect(leakMarks([entry(1, treated)], frame).map(({ grade }) => grade)).toEqual(['run'])
})
