import { FieldEvent } from '@glandkeeper/contract/events'
import { aValveId } from '@glandkeeper/fixtures/a-reading'
import { expect, test } from 'vitest'
import { type Draft, emptyDraft, factsOf, missingIn } from './draft.ts'
import { noSource, type Reel, sourceFacts, takenOf, workedOut } from './reel.ts'

const reel: Reel = {
  lotId: '01890000-0000-7000-8000-0000000000aa',
  says: 'R-12 · 5.4 m · graphite braid 8 mm',
  unit: 'm',
  perRing: 0.1147,
}

test('a set is worked out with a wrap more, to the centimetre above; pressed rings are counted', () => {
  expect(workedOut(reel, 5, 1)).toBe(0.69)
  expect(workedOut(reel, 1, 0)).toBe(0.12)
  expect(workedOut({ ...reel, perRing: 0.12 }, 5, 0)).toBe(0.6)
  expect(workedOut({ ...reel, unit: 'pc', perRing: 1 }, 5, 1)).toBe(5)
  expect(workedOut({ ...reel, perRing: null }, 5, 1)).toBeNull()
  expect(workedOut(reel, null, 1)).toBeNull()
})

test('what somebody says is taken goes before what was worked out', () => {
  expect(takenOf({ ...noSource, reel, taken: 0.8 }, 5, 1)).toBe(0.8)
  expect(takenOf({ ...noSource, reel }, 5, 1)).toBe(0.69)
  expect(takenOf({ ...noSource, taken: 0.8 }, 5, 1)).toBeNull()
})

test('an entry says the batch alone, or the reel with its amount, or nothing', () => {
  expect(sourceFacts(noSource, 5, 1)).toEqual({})
  expect(sourceFacts({ ...noSource, batch: ' ' }, 5, 1)).toEqual({})
  expect(sourceFacts({ ...noSource, batch: 'B-7' }, 5, 1)).toEqual({ batch: 'B-7' })
  expect(sourceFacts({ ...noSource, batch: 'B-7', reel }, 5, 1)).toEqual({
    batch: 'B-7',
    fromStore: [{ lotId: reel.lotId, amount: 0.69 }],
  })
  expect(sourceFacts({ ...noSource, reel }, null, 1)).toEqual({})
})

const topUp = (change: Partial<Draft>): Draft => ({ ...emptyDraft, kind: 'ring added', ...change })

test('a ring on top takes itself off the reel and no wrap more, and the contract has a place for it', () => {
  const [fact] = factsOf(topUp({ reel, batch: 'B-7', ringsAdded: 2 }))
  expect(fact).toMatchObject({ kind: 'ring.added', rings: 2, batch: 'B-7', fromStore: [{ lotId: reel.lotId, amount: 0.23 }] })
  const stamp = {
    id: '01890000-0000-7000-8000-000000000001',
    version: 1,
    valveId: aValveId(),
    takenAt: '2026-05-04T10:00:00Z',
    device: 'test',
  }
  expect(FieldEvent.safeParse({ ...stamp, ...fact }).error).toBeUndefined()
})

test('a reel without an amount is asked about before it is saved', () => {
  const unknown = { ...reel, perRing: null }
  expect(missingIn(topUp({ reel: unknown }))).toBe('Say how much was taken from the reel.')
  expect(missingIn(topUp({ reel: unknown, taken: 0.3 }))).toBeNull()
  expect(missingIn(topUp({ reel }))).toBeNull()
})
