import { FieldEvent } from '@glandkeeper/contract/events'
import { aValveId } from '@glandkeeper/fixtures/a-reading'
import { beforeEach, expect, test } from 'vitest'
import { planOf } from './plan.ts'
import { keepDraft, keptDraft, newDraft, type ProofDraft } from './proof-draft.ts'
import { noteOf, repackInWords, repackOf, torqueReached } from './repack-entry.ts'

const blank = newDraft(new Date('2026-05-04T10:00:00Z'))
const loads = [
  { torque: 4, says: 'stem through its travel twice' },
  { torque: 13.2, says: 'read both gaps' },
]
const entryOf = (change: Partial<ProofDraft>) => {
  const draft = { ...blank, rings: 3, ...change }
  return repackOf(draft, { ...planOf(null, draft), loads })
}

beforeEach(() => {
  const kept = new Map<string, string>()
  Object.assign(globalThis, {
    localStorage: {
      getItem: (key: string) => kept.get(key) ?? null,
      setItem: (key: string, value: string) => kept.set(key, value),
      removeItem: (key: string) => kept.delete(key),
    },
  })
})

test('a repack done to the end says all of it, and the contract takes it', () => {
  const entry = entryOf({
    seated: 3,
    loaded: 2,
    wheel: 'no overrun',
    gapLeft: 8,
    gapRight: 8.2,
    family: 'graphite braid',
    section: 8.5,
    cut: 'skive',
  })
  expect(entry).toEqual({
    kind: 'packing.renewed',
    family: 'graphite braid',
    cut: 'skive',
    rings: 3,
    section: 8.5,
    gapLeft: 8,
    gapRight: 8.2,
    proved: true,
    jointsStaggered: true,
    loadedInSteps: true,
    // The last step was pressed as done.
    torque: 13.2,
  })
  const stamp = {
    id: '01890000-0000-7000-8000-000000000001',
    version: 1,
    valveId: aValveId(),
    takenAt: '2026-05-04T10:00:00Z',
    device: 'test',
  }
  expect(FieldEvent.safeParse({ ...stamp, ...entry }).error).toBeUndefined()
})

test('what was not done is not said: no proof without a wheel, no joints without every ring', () => {
  expect(entryOf({ seated: 2, loaded: 1, wheel: 'not tried' })).toEqual({
    kind: 'packing.renewed',
    family: 'unknown',
    cut: 'unknown',
    rings: 2,
  })
  expect(entryOf({ wheel: 'overran' })).toMatchObject({ proved: false })
  expect(entryOf({})).not.toHaveProperty('rings')
})

test('the stem goes into the note, and the words say what was proved', () => {
  expect(noteOf({ stem: 'firm', note: ' new studs ' })).toBe('Stem firm. new studs')
  expect(noteOf({ stem: null, note: '' })).toBe('')
  expect(repackInWords({ seated: 5, wheel: 'no overrun' })).toBe('repacked, 5 rings, no overrun')
  expect(repackInWords({ seated: 0, wheel: null })).toBe('repacked')
})

test('the steps of one valve are kept on this device until they are forgotten, and another valve has its own', () => {
  const draft = { ...blank, seated: 2, gapLeft: Number.NaN }
  keepDraft('one', draft)
  expect(keptDraft('one')).toEqual({ ...draft, gapLeft: null })
  expect(keptDraft('other')).toBeNull()
  keepDraft('one', null)
  expect(keptDraft('one')).toBeNull()
})

test('what cannot be read any more is begun anew', () => {
  for (const text of ['{', '{"seated":2}', 'null']) {
    localStorage.setItem('proof one', text)
    expect(keptDraft('one')).toBeNull()
  }
})

const reel = { lotId: '01890000-0000-7000-8000-0000000000aa', says: 'R-12', unit: 'm' as const, perRing: 0.1147 }

test('what was found, taken from the store and reached is in it, with who did it', () => {
  const entry = entryOf({
    found: [{ condition: 'hard', cause: 'heat' }, { condition: 'missing' }],
    batch: 'B-7741',
    reel,
    torque: 12.5,
    doneBy: 'contractor',
    doneByName: 'Brack and Sons',
  })
  expect(entry).toMatchObject({
    found: [{ condition: 'hard', cause: 'heat' }, { condition: 'missing' }],
    batch: 'B-7741',
    // Three rings and a wrap more.
    fromStore: [{ lotId: reel.lotId, amount: 0.46 }],
    torque: 12.5,
    doneBy: { kind: 'contractor', name: 'Brack and Sons' },
  })
  expect(entryOf({ reel, taken: 0.6 })).toMatchObject({ fromStore: [{ lotId: reel.lotId, amount: 0.6 }] })
})

test('a torque is said only where every step is ticked, or somebody read it', () => {
  const reached = (change: Partial<ProofDraft>) => {
    const draft = { ...blank, ...change }
    return torqueReached(draft, { ...planOf(null, draft), loads })
  }
  expect(reached({ loaded: 1 })).toBeNull()
  expect(reached({ loaded: 2 })).toBe(13.2)
  expect(reached({ loaded: 1, torque: 11 })).toBe(11)
  expect(torqueReached({ ...blank, loaded: 1 }, planOf(null, blank))).toBeNull()
})

test('what was begun before a record of the old rings was kept goes on', () => {
  const { found: _, batch: __, reel: ___, taken: ____, torque: _____, doneBy: ______, doneByName: _______, ...before } = blank
  localStorage.setItem('proof one', JSON.stringify({ ...before, seated: 2 }))
  expect(keptDraft('one')).toEqual({ ...blank, seated: 2 })
})
