import { problemOf } from '@glandkeeper/contract/problem'
import type { Finding } from '@glandkeeper/contract/reserve'
import type { RoundStop } from '@glandkeeper/contract/rounds'

import { aLeak, aNip, aReading, aValveId } from '@glandkeeper/fixtures/a-reading'
import { describe, expect, test } from 'vitest'
import type { OutboxEntry } from '../../platform/outbox/entries.ts'
import { enteredAt } from './entered.ts'
import { changesFor } from './put-right-row.ts'
import { emptyRow, rowInWords } from './row-texts.ts'
import { faultsOfProblem, isUnsaved, newRow, standingOf, type TypedRow, withoutShown } from './typed-round.ts'

const valveId = aValveId(1)
const takenAt = '2026-05-04T11:00:00Z'
const nip = aNip({ valveId, takenAt })
const reading = aReading({ valveId, takenAt })
const row: TypedRow = { texts: { ...emptyRow, gapLeft: '12' }, made: [nip, reading], isSaved: true, says: 'gap 12 left mm' }
const entry = (event: OutboxEntry['event'], state: OutboxEntry['state'] = 'waiting'): OutboxEntry => ({
  n: 1,
  event,
  personId: aValveId(9),
  tag: 'BM-3307',
  says: 'half a turn',
  state,
  problem: state === 'refused' ? problemOf('event/invalid') : null,
})
const visit: RoundStop['visit'] = { at: takenAt, kind: 'gland.nipped', missed: null }
const seen = { entries: [], outcomes: new Map(), arrived: new Set<string>() }
const accepted = (id: string) => [id, { id, outcome: 'accepted' as const, position: 1, findings: [] as Finding[] }] as const

describe('a row', () => {
  test('is open until it is saved, and unsaved with the first letter', () => {
    expect(standingOf({ ...row, isSaved: false }, { visit: null }, seen)).toEqual({ is: 'open' })
    expect([isUnsaved(newRow), isUnsaved({ ...row, isSaved: false }), isUnsaved(row)]).toEqual([false, true, false])
  })

  test('is on this device until every entry of it has arrived', () => {
    expect(standingOf(row, { visit: null }, { ...seen, entries: [entry(reading)] })).toMatchObject({
      says: 'saved on this device',
    })
    const outcomes = new Map([accepted(nip.id), accepted(reading.id)])
    expect(standingOf(row, { visit: null }, { ...seen, outcomes })).toMatchObject({ says: 'saved' })
    expect(standingOf(row, { visit: null }, { ...seen, arrived: new Set([nip.id, reading.id]) })).toMatchObject({ says: 'saved' })
    expect(standingOf(row, { visit }, seen)).toMatchObject({ says: 'saved' })
  })

  test('that nobody has heard of is not called saved', () => {
    const outcomes = new Map([accepted(nip.id)])
    expect(standingOf(row, { visit: null }, { ...seen, outcomes })).toMatchObject({ says: expect.stringContaining('no longer') })
  })

  test('that was refused is open again, with what was refused', () => {
    const refused = entry(reading, 'refused')
    expect(standingOf(row, { visit }, { ...seen, entries: [entry(nip), refused] })).toEqual({ is: 'refused', refused: [refused] })
  })

  test('that the register shows is kept here no longer, one on its way is', () => {
    const typed = { day: '2026-05-04', takenBy: '', rows: { [valveId]: row } }
    const stops = [{ valveId, visit }] as RoundStop[]
    expect(withoutShown(typed, stops, seen).rows).toEqual({})
    expect(withoutShown(typed, stops, { ...seen, entries: [entry(nip)] }).rows).toEqual(typed.rows)
    const begun = { ...typed, rows: { [valveId]: { ...row, made: [], isSaved: false } } }
    expect(withoutShown(begun, stops, seen)).toEqual(begun)
    expect(withoutShown(typed, [{ valveId, visit: null }] as RoundStop[], seen).rows).toEqual(typed.rows)
  })
})

test('what was refused is changed under its own id, by the entry of its kind', () => {
  const again = [aNip({ valveId, takenAt, count: 2 }), aReading({ valveId, takenAt, count: 2, gapLeft: 7 })]
  const refused = entry(reading, 'refused')
  expect(changesFor([refused], again)).toEqual([{ entry: refused, event: { ...again[1], id: reading.id } }])
  expect(changesFor([refused], [again[0]!])).toBeNull()
})

test('a refusal of the server is told at its cells, or of the row where it names none', () => {
  const errors = [
    { pointer: '#/takenAt', detail: 'has not come yet' },
    { pointer: '#/valveId', detail: 'strange' },
  ]
  expect(faultsOfProblem(problemOf('event/invalid', 'x', errors)).map(({ cell }) => cell)).toEqual(['time', null])
  expect(faultsOfProblem(problemOf('valve/unknown', 'BM-3307'))).toMatchObject([{ cell: null, says: 'No such valve: BM-3307.' }])
})

describe('what was entered at a stop since the round was made', () => {
  const around = { waiting: [], card: null, timeZone: 'Europe/London' }
  test('is told, from this device or from the register', () => {
    expect(enteredAt({ valveId, visit: null }, around)).toBeNull()
    expect(enteredAt({ valveId, visit: null }, { ...around, waiting: [entry(nip)] })).toBe(
      '4 May 2026, 12:00: half a turn, on this device',
    )
    expect(enteredAt({ valveId, visit }, around)).toBe('4 May 2026, 12:00: an entry was made')
    const missed = { at: takenAt, kind: 'visit.missed', missed: 'too hot' } as const
    expect(enteredAt({ valveId, visit: missed }, around)).toBe('4 May 2026, 12:00: not done, too hot')
  })

  test('of another valve is not', () => {
    const other = aLeak({ valveId: aValveId(2), takenAt })
    expect(enteredAt({ valveId, visit: null }, { ...around, waiting: [entry(other)] })).toBeNull()
  })
})

test('a row in a line', () => {
  expect(
    rowInWords(
      { ...emptyRow, turnsLeft: '1/2', turnsRight: '3f', gapLeft: '7.4', leakBefore: 'weep', stem: 'firm', note: 'noisy' },
      'mm',
    ),
  ).toBe('turns 1/2 left, 3f right; gap 7.4 left mm; leak weep before; stem firm; noisy')
  expect(rowInWords({ ...emptyRow, missed: 'too hot' }, 'mm')).toBe('could not do it: too hot')
})
