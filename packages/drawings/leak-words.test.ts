import type { BeforeLeak } from '@glandkeeper/contract/leaks'
import { expect, it } from 'vitest'
import { beforeInWords, leakStateInWords, lengthInWords } from './leak-words.ts'

const nothing = {
  daysBetweenNips: [],
  nipsCloser: null,
  usedLately: null,
  usedBefore: null,
  reserveThen: null,
  packingAgeDays: null,
  family: null,
  familyBefore: null,
  earlierLeaks: 0,
  lastTouchedBy: null,
  lastTouchedCrew: null,
  lastTouchedSays: null,
  lastTouchedDays: null,
  temperature: null,
  hottestOfFamily: null,
  findings: [],
}
const before = (known: object) => beforeInWords({ ...nothing, ...known } as unknown as BeforeLeak)

it('of what nobody knows nothing is said', () => {
  expect(before({})).toEqual([])
})

it('nips that came closer stand out and are told first; steady ones are only told', () => {
  const closer = before({ family: 'PTFE braid', daysBetweenNips: [40, 35, 21, 15], nipsCloser: { first: 37.5, last: 18 } })
  expect(closer[0]).toEqual({
    name: 'Days between nips',
    says: 'nips came closer, from 38 to 18 days apart: 40, 35, 21, 15',
    standsOut: true,
  })
  const [steady] = before({ daysBetweenNips: [40, 35], nipsCloser: { first: 40, last: 35 } })
  expect(steady).toMatchObject({ says: '40, 35', standsOut: false })
})

it('travel used faster, none left, a young packing, another one, too much heat: each stands out by itself', () => {
  const standing = (known: object) =>
    before(known)
      .filter(({ standsOut }) => standsOut)
      .map(({ says }) => says)
  expect(standing({ usedLately: 1.6, usedBefore: 1 })).toEqual(['1.6\u00a0mm in the last three months, 1.0\u00a0mm before that'])
  expect(standing({ usedLately: 1.4, usedBefore: 1 })).toEqual([])
  expect(standing({ reserveThen: 0 })).toEqual(['none: it could not be taken up any more'])
  expect(standing({ reserveThen: 0.4 })).toEqual([])
  expect(standing({ packingAgeDays: 29 })).toEqual(['29 days'])
  expect(standing({ packingAgeDays: 31 })).toEqual([])
  const another = { family: 'PTFE braid', familyBefore: 'graphite braid' }
  expect(standing({ ...another, packingAgeDays: 180 })).toEqual(['PTFE braid, after graphite braid'])
  expect(standing({ ...another, packingAgeDays: 190 })).toEqual([])
  expect(standing({ temperature: 300, hottestOfFamily: 260 })).toHaveLength(1)
  expect(standing({ earlierLeaks: 1 })).toEqual([])
  expect(standing({ earlierLeaks: 2 })).toEqual(['2'])
})

it('how a leak stands is told with what was done', () => {
  expect(leakStateInWords({ state: 'open', attempts: 0 as never, reopened: 0 as never })).toBe('open, nothing done yet')
  expect(leakStateInWords({ state: 'attempted', attempts: 1 as never, reopened: 0 as never })).toBe(
    'one attempt, nobody has looked since',
  )
  expect(leakStateInWords({ state: 'verified', attempts: 2 as never, reopened: 1 as never })).toBe(
    'seen without a leak after 2 attempts, after it came back once',
  )
  expect(leakStateInWords({ state: 'verified', attempts: 0 as never, reopened: 0 as never })).toBe('gone without work')
})

it('lengths are told in hours, days, months and years', () => {
  expect([0.1, 1, 20, 90, 900].map(lengthInWords)).toEqual(['2 hours', '24 hours', '20 days', '3 months', '2.5 years'])
})

it('who touched it last is told with what they did, and how long before', () => {
  const touched = {
    lastTouchedBy: 'J. Harrow',
    lastTouchedCrew: 'Steam crew',
    lastTouchedDays: 6,
    lastTouchedSays: 'Taken up 1 turn.',
  }
  expect(before(touched)[0]?.says).toBe('J. Harrow, Steam crew, 6 days before: Taken up 1 turn.')
})
