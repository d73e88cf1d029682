import type { FieldEvent, TimelineEntry } from '@glandkeeper/contract/events'
import type { LeakHistory } from '@glandkeeper/contract/leaks'
import { aCorrection, aLeak, aNip, aReading, aTreatment, aValveId } from '@glandkeeper/fixtures/a-reading'
import { expect, test } from 'vitest'
import { courseOf } from './course.ts'

const valveId = aValveId()
const at = (day: string) => `${day}T08:00:00Z`
const now = new Date(at('2026-05-04'))

function told(event: FieldEvent, more: Partial<TimelineEntry> = {}): TimelineEntry {
  const entry = { event, receivedAt: event.takenAt, by: 'R. Oakes', device: 'd', position: 1, says: '', reserveAfter: null }
  return { ...entry, findings: [], standsAs: 'as entered', ...more }
}

const leak = (leakId: string, openedAt: string, steps: readonly { at: string; what: string }[] = []) =>
  ({ leakId, openedAt, verifiedAt: null, steps }) as unknown as LeakHistory['leaks'][number]

const course = (timeline: TimelineEntry[], leaks: LeakHistory['leaks'] = [], shownId = '') =>
  courseOf({
    valve: { points: [], lives: [{ from: null, to: null, family: 'PTFE braid', rings: 5 }], timeline },
    leaks,
    shownId,
    now,
    timeZone: 'Europe/London',
    width: 800,
  })

test('a nip is the mean of both nuts, and each look is one mark by the worst of it', () => {
  const nip = aNip({
    valveId,
    takenAt: at('2026-03-02'),
    turnsLeft: 0.5,
    turnsRight: 0.25,
    leakBefore: 'drip',
    leakAfter: 'damp',
  })
  const treated = aTreatment({ valveId, takenAt: at('2026-03-20'), leakBefore: 'weep', leakAfter: 'dry' })
  const { nips, sightings } = course([
    told(nip),
    told(treated),
    told(aReading({ valveId, takenAt: at('2026-04-01'), leak: undefined })),
  ])
  expect(nips).toEqual([{ at: at('2026-03-02'), turns: 0.375 }])
  expect(sightings).toEqual([
    { at: at('2026-03-02'), grade: 'drip' },
    { at: at('2026-03-20'), grade: 'weep' },
  ])
})

test('what a meter saw and no eye did is a mark without a word; a clean look with a meter stays dry', () => {
  const metered = aLeak({ valveId, takenAt: at('2026-03-02'), leak: 'dry', screeningValue: 12_000 })
  const clean = aLeak({ valveId, takenAt: at('2026-04-02'), leak: 'dry', screeningValue: 20 })
  const leaks = [leak('a', at('2026-03-02'), [{ at: '2026-03-02T08:00:00.000Z', what: 'seen' }])]
  expect(course([told(metered), told(clean)], leaks).sightings.map(({ grade }) => grade)).toEqual([null, 'dry'])
})

test('it begins with the first that is known, and shows four months at least', () => {
  expect(course([told(aReading({ valveId, takenAt: at('2021-01-21') }))]).from).toBe('2021-01-21T08:00:00.000Z')
  expect(course([told(aReading({ valveId, takenAt: at('2026-05-01') }))]).from).toBe('2026-01-04T08:00:00.000Z')
})

test('what was taken back is no finding and no nip', () => {
  const nip = aNip({ valveId, takenAt: at('2026-03-02') })
  const finding = { code: 'reserve/follower-tilts', detail: 'tilts' }
  const back = aCorrection({ valveId, takenAt: at('2026-03-02'), corrects: nip.id })
  const taken = course([told(nip, { standsAs: 'taken back', findings: [finding] }), told(back, { standsAs: 'correction' })])
  expect([taken.nips, taken.findings]).toEqual([[], []])
  expect(course([told(nip, { findings: [finding] })]).findings).toEqual([{ at: at('2026-03-02') }])
})

test('the leak of the address is the one that is marked, and none where it names none', () => {
  const leaks = [leak('a', at('2026-01-02')), leak('b', at('2026-03-02'))]
  expect(course([], leaks, 'b').shown).toBe(1)
  expect(course([], leaks, 'c')).not.toHaveProperty('shown')
  expect(course([], leaks).open).toEqual([
    { from: at('2026-01-02'), to: null },
    { from: at('2026-03-02'), to: null },
  ])
})
