import { aDeferral, aLeak, aReading, aRepack, aTreatment, aValveId } from '@glandkeeper/fixtures/a-reading'
import { expect, test } from 'vitest'
import { eventWith, fieldsOf } from './put-right.ts'

const reading = aReading({
  valveId: aValveId(),
  takenAt: '2026-05-04T10:00:00Z',
  gapLeft: 65,
  gapRight: 5.7,
  leak: undefined,
  note: 'misread',
})

test('its figures and words may be changed, what makes it this entry may not', () => {
  expect(fieldsOf(reading)).toEqual({ takenAt: '2026-05-04T10:00:00Z', gapLeft: '65', gapRight: '5.7', note: 'misread' })
})

test('what was ticked is not for typing, and stays as it was', () => {
  const repack = aRepack({ valveId: aValveId(), takenAt: '2026-05-04T10:00:00Z', jointsStaggered: true, loadedInSteps: true })
  for (const field of ['proved', 'jointsStaggered', 'loadedInSteps']) expect(fieldsOf(repack)).not.toHaveProperty(field)
  expect(eventWith(repack, { rings: '6' })).toMatchObject({ ok: true, event: { rings: 6, jointsStaggered: true, proved: true } })
})

test('a figure put right keeps the id, an emptied field is left out', () => {
  const changed = eventWith(reading, { gapLeft: '6,5', note: ' ' })
  expect(changed).toMatchObject({ ok: true, event: { id: reading.id, gapLeft: 6.5, gapRight: 5.7 } })
  expect(changed.ok && 'note' in changed.event).toBe(false)
})

test('what the contract cannot take is said by field', () => {
  expect(eventWith(reading, { gapLeft: '650' })).toEqual({ ok: false, faults: ['gapLeft: Gap: at most 200 mm'] })
  expect(eventWith(reading, { gapLeft: 'six' })).toMatchObject({ ok: false })
})

test('what was found and taken is a list and not for typing, and stays as it was; batch and torque may be put right', () => {
  const found = [{ condition: 'hard' as const }]
  const doneBy = { kind: 'contractor' as const, name: 'Brack' }
  const fromStore = [{ lotId: '01890000-0000-7000-8000-0000000000aa', amount: 0.7 as never }]
  const at = { valveId: aValveId(), takenAt: '2026-05-04T10:00:00Z' }
  const repack = aRepack({ ...at, found, doneBy, fromStore, batch: 'B-7', torque: 13.2 })
  for (const field of ['found', 'doneBy', 'fromStore']) expect(fieldsOf(repack)).not.toHaveProperty(field)
  expect(eventWith(repack, { batch: 'B-8', torque: '12' })).toMatchObject({
    ok: true,
    event: { found, doneBy, fromStore, batch: 'B-8', torque: 12 },
  })
})

test('a sighting, a treatment and a repair put off are put right too; the end of the meter stays as it was ticked', () => {
  const at = { valveId: aValveId(), takenAt: '2026-05-04T10:00:00Z' }
  const seen = aLeak({ ...at, screeningValue: 900, isPegged: true, instrument: 'Meter 2' })
  expect(fieldsOf(seen)).not.toHaveProperty('isPegged')
  expect(eventWith(seen, { screeningValue: '800', instrument: 'Meter 3' })).toMatchObject({
    ok: true,
    event: { screeningValue: 800, instrument: 'Meter 3', isPegged: true },
  })
  expect(eventWith(aTreatment(at), { treatment: 'stem cleaned' })).toMatchObject({
    ok: true,
    event: { treatment: 'stem cleaned' },
  })
  expect(eventWith(aDeferral({ ...at, until: '2026-06-01' }), { until: '' })).toMatchObject({ ok: true })
  expect(eventWith(aDeferral(at), { approvedBy: ' ' })).toMatchObject({ ok: false })
})
