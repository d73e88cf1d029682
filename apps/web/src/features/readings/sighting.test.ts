import { expect, test } from 'vitest'
import { emptyDraft, type Draft, factsOf, missingIn } from './draft.ts'
import { isSaidMore, noSighting, oddReading, sightingFacts } from './sighting.ts'
import { moreInWords } from './sighting-words.ts'

const meter = { screeningValue: 12_400, background: 4, isPegged: true, instrument: 'Meter 2', calibratedOn: '2026-05-03' }
const seen = (change: Partial<Draft>) => factsOf({ ...emptyDraft, kind: 'leak seen', leak: 'drip', ...change })

test('a sighting in full is one entry with all that was said', () => {
  const said = {
    ...meter,
    dropsPerMinute: 12,
    plume: 0.4,
    opening: 1.5,
    stemPosition: 'partly open',
    duty: 'in service',
  } as const
  expect(seen(said)).toEqual([{ kind: 'leak.seen', leak: 'drip', ...said }])
})

test('no leak seen is an answer too, with meter, stem and line, but without drops, plume and hole', () => {
  const said = { screeningValue: 60, stemPosition: 'shut', duty: 'shut down' } as const
  expect(seen({ ...said, leak: 'dry', dropsPerMinute: 3, plume: 0.4, opening: 1 })).toEqual([
    { kind: 'leak.seen', leak: 'dry', ...said },
  ])
})

test('a meter remembered from the last sighting says nothing by itself', () => {
  const remembered = { instrument: 'Meter 2', calibratedOn: '2026-05-03' }
  expect(isSaidMore({ ...noSighting, ...remembered }, 'drip')).toBe(false)
  expect(seen(remembered)).toEqual([{ kind: 'leak.seen', leak: 'drip' }])
  expect(factsOf({ ...emptyDraft, ...remembered })).toHaveLength(1)
  expect(moreInWords({ ...noSighting, ...remembered }, 'drip')).toBe('More about the leak')
})

test('how the stem stood is said of the look before the nuts were turned', () => {
  const turned: Draft = { ...emptyDraft, leakBefore: 'weep', stemPosition: 'open' }
  expect(factsOf(turned)).toMatchObject([
    { kind: 'leak.seen', leak: 'weep', stemPosition: 'open' },
    { kind: 'gland.nipped', leakBefore: undefined, leakAfter: 'dry' },
  ])
  expect(missingIn({ ...turned, leakBefore: null })).toContain('before the nuts were touched')
})

test('a meter that was not at its end is not said to have been', () => {
  expect(sightingFacts({ ...noSighting, screeningValue: 40 }, 'weep')).toHaveProperty('isPegged', undefined)
})

test('background without a reading is asked about, and one above the reading too', () => {
  const draft: Draft = { ...emptyDraft, kind: 'leak seen', background: 4 }
  expect(missingIn(draft)).toContain('Give the screening value')
  expect(missingIn({ ...draft, background: null, isPegged: true })).toContain('Give the screening value')
  expect(missingIn({ ...draft, screeningValue: 4 })).toBeNull()
  expect(oddReading({ ...noSighting, screeningValue: 4, background: 4 })).toBeNull()
  expect(oddReading({ ...noSighting, screeningValue: 4, background: 5 })).toContain('above what the meter showed')
})

test('what is set stays in sight on the fold', () => {
  const said = { ...noSighting, ...meter, plume: 0.4, duty: 'in service', stemPosition: 'shut' } as const
  expect(moreInWords(said, 'drip')).toBe(
    'More about the leak: plume 0.4\u00a0m, background 4\u00a0ppmv, meter at its end, Meter 2, calibrated 3 May 2026, stem shut, line in service',
  )
  expect(moreInWords(said, 'dry')).not.toContain('plume')
})
