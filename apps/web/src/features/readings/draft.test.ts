import { StemFeel } from '@glandkeeper/contract/events'
import { expect, test } from 'vitest'
import { type Draft, emptyDraft, factsOf, missingIn } from './draft.ts'

const facts = (change: Partial<Draft>) => factsOf({ ...emptyDraft, ...change })
const kindsOf = (change: Partial<Draft>) => facts(change).map(({ kind }) => kind)

test('the leak before goes into the nip when somebody says it, and only then', () => {
  expect(facts({ leakBefore: 'weep', leak: 'dry' })).toEqual([
    { kind: 'gland.nipped', turnsLeft: 0.5, turnsRight: 0.5, leakBefore: 'weep', leakAfter: 'dry' },
  ])
  expect(facts({})[0]).toHaveProperty('leakBefore', undefined)
})

test('a leak with figures beside a nip is a sighting before it, and the nip does not say that leak again', () => {
  const [seen, nip, reading] = facts({
    leakBefore: 'drip',
    dropsPerMinute: 12,
    screeningValue: 900,
    gapLeft: 6.5,
    stem: 'firm',
  })
  expect(seen).toEqual({ kind: 'leak.seen', leak: 'drip', dropsPerMinute: 12, screeningValue: 900 })
  expect(nip).toMatchObject({ kind: 'gland.nipped', leakBefore: undefined, leakAfter: 'dry', stem: 'firm' })
  expect(reading).toEqual({ kind: 'reading.taken', gapLeft: 6.5 })
})

test('a leak with figures beside a reading is a sighting too, and is counted once', () => {
  expect(facts({ turns: 'none', leak: 'weep', screeningValue: 900, gapLeft: 6.5 })).toEqual([
    { kind: 'leak.seen', leak: 'weep', screeningValue: 900 },
    { kind: 'reading.taken', gapLeft: 6.5 },
  ])
  expect(kindsOf({ turns: 'none', leak: 'weep', screeningValue: 900 })).toEqual(['leak.seen'])
})

test('drops are not said of a gland that is dry; a screening value is', () => {
  expect(facts({ kind: 'leak seen', leak: 'dry', dropsPerMinute: 12, screeningValue: 60 })).toEqual([
    { kind: 'leak.seen', leak: 'dry', screeningValue: 60 },
  ])
  expect(kindsOf({ leakBefore: 'dry', dropsPerMinute: 12 })).toEqual(['gland.nipped'])
})

test('figures without the leak they belong to are asked about', () => {
  expect(missingIn({ ...emptyDraft, dropsPerMinute: 12 })).toContain('before the nuts were touched')
  expect(missingIn({ ...emptyDraft, dropsPerMinute: 12, leakBefore: 'drip' })).toBeNull()
  expect(missingIn({ ...emptyDraft, dropsPerMinute: 12, turns: 'none' })).toBeNull()
  expect(missingIn(emptyDraft)).toBeNull()
})

test('flats of the nut are kept as sixths of a turn, and each nut by itself', () => {
  expect(facts({ turns: 'other', otherTurns: { left: 1 / 6, right: -1 / 3 } })[0]).toMatchObject({
    turnsLeft: 1 / 6,
    turnsRight: -1 / 3,
  })
})

test("the five words for the stem are the record's", () => {
  for (const stem of StemFeel.options) expect(facts({ stem })[0]).toMatchObject({ stem })
  expect(StemFeel.options).toEqual(['free', 'firm', 'stiff', 'seized', 'not tried'])
})
