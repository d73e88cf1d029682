import { RegulatedLeak } from '@glandkeeper/contract/leak-rules'
import type { z } from 'zod'
import { expect, test } from 'vitest'
import { CLOCK_WIDTH, clockBar, clockFrame } from './clock-geometry.ts'

const TODAY = '2026-05-20'

function aLeak(change: Partial<z.input<typeof RegulatedLeak>> = {}): RegulatedLeak {
  return RegulatedLeak.parse({
    leakId: '01890000-0000-7000-8000-000000000001',
    tag: 'BM-1',
    description: '',
    areaCode: 'BM',
    detectedOn: '2026-05-10',
    worst: 'weep',
    worstScreening: null,
    firstAttemptOn: null,
    firstAttemptBy: '2026-05-15',
    attempt: 'overdue',
    repairedOn: null,
    repairBy: '2026-05-30',
    repair: 'due',
    daysLeft: 10,
    deferral: null,
    ...change,
  })
}
const barOf = (leak: RegulatedLeak) => {
  const frame = clockFrame([leak], TODAY)
  return { frame, bar: clockBar(leak, frame, TODAY) }
}

test('from the day it was seen to the day it is due, with today between', () => {
  const { frame, bar } = barOf(aLeak())
  expect(bar.ran).toEqual([8, frame.today])
  expect(bar.left).toEqual([frame.today, CLOCK_WIDTH - 8])
  expect(frame.today).toBeCloseTo(CLOCK_WIDTH / 2, 0)
  expect(bar.over).toBeNull()
  expect(bar.attemptBy).toBeCloseTo(8 + (CLOCK_WIDTH - 16) / 4, 0)
})

test('past its day the time over is drawn, and none is left', () => {
  const { frame, bar } = barOf(aLeak({ repairBy: '2026-05-15', repair: 'overdue' }))
  expect(bar.left).toBeNull()
  expect(bar.over).toEqual([frame.x('2026-05-15'), frame.today])
  expect(bar.ran[1]).toBe(frame.x('2026-05-15'))
})

test('put off it runs to the new day; without one nothing runs out', () => {
  const putOff = (until: string | null) =>
    barOf(aLeak({ repair: 'put off', repairBy: '2026-05-18', deferral: { reason: 'r', approvedBy: 'a', until } }))
  const dated = putOff('2026-06-10')
  expect(dated.bar.left).toEqual([dated.frame.today, dated.frame.x('2026-06-10')])
  expect(dated.bar.until).toBe(dated.frame.x('2026-06-10'))
  expect(putOff(null).bar).toMatchObject({ left: null, over: null, until: null })
})

test('a leak of years ago is broken at the edge, and does not crush the others', () => {
  const old = aLeak({ detectedOn: '2023-01-01', firstAttemptBy: '2023-01-06', repairBy: '2023-01-16', repair: 'overdue' })
  const frame = clockFrame([old, aLeak()], TODAY)
  expect(frame.from).toBe('2026-02-19')
  expect(clockBar(old, frame, TODAY)).toMatchObject({ isBrokenLeft: true, isBrokenRight: false, ran: [8, 8] })
  expect(clockBar(aLeak(), frame, TODAY).isBrokenLeft).toBe(false)
})

test('without leaks there is an axis all the same', () => {
  const { x, today } = clockFrame([], TODAY)
  expect([x(TODAY), today].every(Number.isFinite)).toBe(true)
})
