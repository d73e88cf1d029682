import { FieldEvent } from '@glandkeeper/contract/events'
import { aValveId } from '@glandkeeper/fixtures/a-reading'
import { beforeEach, expect, test } from 'vitest'
import { planOf } from './plan.ts'
import { keepDraft, keptDraft, newDraft, type ProofDraft } from './proof-draft.ts'
import { noteOf, repackInWords, repackOf } from './repack-entry.ts'

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
