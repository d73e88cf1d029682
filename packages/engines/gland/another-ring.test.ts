import { mm } from '@glandkeeper/units/quantity'
import { expect, test } from 'vitest'
import { anotherRing } from './another-ring.ts'

const box = { noseLength: mm(20), section: mm(8), leastEngagement: mm(3) }

test('a 20 mm nose with a gap of 4 mm is 16 mm in the box: 8 mm over another ring of 8 mm, and it fits', () => {
  expect(anotherRing({ ...box, gap: mm(4) })).toEqual({ ok: true, fits: true, noseInBox: 16, entryOverAnother: 8 })
})

test('it fits as long as the nose enters by the least engagement, 20 - 9 - 8 = 3 mm, and no longer', () => {
  expect(anotherRing({ ...box, gap: mm(9) })).toMatchObject({ fits: true, entryOverAnother: 3 })
  expect(anotherRing({ ...box, gap: mm(9.1) })).toMatchObject({ fits: false })
})

test('a ring that would stand out of the box has an entry below 0', () => {
  expect(anotherRing({ ...box, gap: mm(14) })).toMatchObject({ fits: false, entryOverAnother: -2 })
})

test('the wider the gap, the less the nose enters', () => {
  let before = Number.POSITIVE_INFINITY
  for (let gap = 0; gap <= 40; gap += 0.5) {
    const found = anotherRing({ ...box, gap: mm(gap) })
    if (!found.ok) throw new Error(found.problem.detail)
    expect(found.entryOverAnother).toBeLessThan(before)
    before = found.entryOverAnother
  }
})

test('what is no length is named', () => {
  for (const wrong of [{ noseLength: mm(0) }, { section: mm(0) }, { gap: mm(-1) }, { leastEngagement: mm(-1) }]) {
    const found = anotherRing({ ...box, gap: mm(4), ...wrong })
    expect(found.ok ? null : found.problem.field).toBe(Object.keys(wrong)[0])
  }
})
