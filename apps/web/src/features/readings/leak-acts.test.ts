import { FieldEvent } from '@glandkeeper/contract/events'
import { aValveCard } from '@glandkeeper/fixtures/a-card'
import { expect, test } from 'vitest'
import { actInWords, questionsBefore, savedInWords } from './draft-words.ts'
import { type Draft, emptyDraft, factsOf, missingIn } from './draft.ts'
import { deferredInWords, noActs } from './leak-acts.ts'

const treated: Draft = { ...emptyDraft, kind: 'something else done about a leak', treatment: 'lubricant injected' }
const deferred: Draft = { ...emptyDraft, kind: 'put the repair off', deferReason: 'part on order', approvedBy: 'P. Lindqvist' }

test('a treatment says what was done, and how it leaked only where somebody looked', () => {
  expect(factsOf(treated)).toEqual([{ kind: 'leak.treated', treatment: 'lubricant injected' }])
  expect(factsOf({ ...treated, leakBefore: 'weep', leakAfter: 'dry' })).toEqual([
    { kind: 'leak.treated', treatment: 'lubricant injected', leakBefore: 'weep', leakAfter: 'dry' },
  ])
  expect(missingIn(treated)).toBeNull()
  expect(missingIn({ ...treated, treatment: null })).toBe('Say what was done.')
})

test('a repair is put off for a reason and by somebody, with or without a day', () => {
  expect(factsOf(deferred)).toEqual([{ kind: 'repair.deferred', reason: 'part on order', approvedBy: 'P. Lindqvist' }])
  expect(factsOf({ ...deferred, until: '2026-06-01' })[0]).toMatchObject({ until: '2026-06-01' })
  expect(missingIn(deferred)).toBeNull()
  expect(missingIn({ ...deferred, deferReason: null })).toBe('Say why the repair is put off.')
  expect(missingIn({ ...deferred, approvedBy: ' ' })).toBe('Say who allowed it.')
})

test('a day that was over when it was decided is asked about', () => {
  const entry = { id: '01890000-0000-7000-8000-000000000001', version: 1, device: 'd', takenAt: '2026-05-04T10:00:00+01:00' }
  const asked = (until: string) => {
    const draft = { ...deferred, until }
    const entries = factsOf(draft).map((fact) =>
      FieldEvent.parse({ ...entry, valveId: '01890000-0000-7000-8000-000000000003', ...fact }),
    )
    return questionsBefore(draft, entries, aValveCard())
  }
  expect(asked('2026-05-03')).toEqual(['It is put off until 3 May 2026, a day that was over already.'])
  expect(asked('2026-05-04')).toEqual([])
  expect(asked('')).toEqual([])
})

test('the button says the act, and the device what it saved', () => {
  expect(actInWords({ ...treated, leakAfter: 'weep' })).toBe('Lubricant injected, weep after')
  expect(actInWords(deferred)).toBe('Put the repair off')
  expect(savedInWords({ ...deferred, until: '2026-06-01' }, aValveCard())).toBe('repair put off: part on order, until 1 Jun 2026')
  expect(savedInWords(treated, aValveCard())).toBe('lubricant injected')
  expect(deferredInWords({ ...noActs, deferReason: 'needs a shutdown' })).toBe('repair put off: needs a shutdown')
})
