import { aCorrection, aNip, aRepack, aRingAdded, aValveId } from '@glandkeeper/fixtures/a-reading'
import { expect, test } from 'vitest'
import { entryInWords } from './entry-in-words.ts'

const at = { valveId: aValveId(), takenAt: '2026-05-04T10:00:00Z' }
const words = (...[event]: Parameters<typeof entryInWords>) => entryInWords(event).replaceAll('\u00a0', ' ')

test('a repack that was ticked step by step says so, and one that was not does not', () => {
  expect(words(aRepack({ ...at, jointsStaggered: true, loadedInSteps: true }))).toBe(
    'Repacked: 5 rings of 8.5 mm, graphite braid, joints staggered, loaded in steps, gap 16.0 mm left, 16.0 mm right, proved, no overrun.',
  )
  expect(words(aRepack(at))).toBe(
    'Repacked: 5 rings of 8.5 mm, graphite braid, gap 16.0 mm left, 16.0 mm right, proved, no overrun.',
  )
})

test('flats of the nut are told as flats', () => {
  expect(words(aNip({ ...at, turnsLeft: 1 / 6, turnsRight: 1 / 6 }))).toBe(
    'Taken up one flat on each nut, weep before, dry after, stem free.',
  )
})

test('a repack says batch, torque and who did it, and then the old rings from the follower down', () => {
  const repack = aRepack({
    ...at,
    loadedInSteps: true,
    batch: 'B-7741',
    torque: 13.2,
    doneBy: { kind: 'contractor', name: 'Brack and Sons' },
    found: [
      { condition: 'hard', cause: 'heat' },
      { condition: 'hard', cause: 'heat' },
      { condition: 'hard', cause: 'heat' },
      { condition: 'crumbled' },
      { condition: 'missing', cause: 'not known' },
    ],
    note: 'Stem polished.',
  })
  expect(words(repack)).toBe(
    'Repacked: 5 rings of 8.5 mm, graphite braid, batch B-7741, loaded in steps, 13.2 N·m on each nut, gap 16.0 mm left, 16.0 mm right, proved, no overrun, done by a contractor: Brack and Sons. Old rings, from the follower down: 1 to 3 hard (heat), 4 crumbled, 5 missing (not known). Stem polished.',
  )
})

test('old rings that are all alike are told once, and two neighbours as two', () => {
  const found = (...conditions: ('hard' | 'torn')[]) =>
    words(aRepack({ ...at, found: conditions.map((condition) => ({ condition })) }))
  expect(found('hard', 'hard', 'hard')).toMatch(/ 3 old rings, all hard\.$/)
  expect(found('torn')).toMatch(/ One old ring: torn\.$/)
  expect(found('hard', 'hard', 'torn')).toMatch(/: 1 and 2 hard, 3 torn\.$/)
})

test('own crew without a name, a ring on top with its batch, and a correction with what was found', () => {
  expect(words(aRepack({ ...at, doneBy: { kind: 'own crew', name: '' } }))).toMatch(/no overrun, done by own crew\.$/)
  expect(words(aRingAdded({ ...at, batch: 'B-7741' }))).toBe(
    'One ring added on top, batch B-7741, gap 11.0 mm left, 11.0 mm right.',
  )
  const { id: _, version: __, valveId: ___, device: ____, ...replacement } = aRepack({ ...at, found: [{ condition: 'burnt' }] })
  const correction = aCorrection({ ...at, corrects: aValveId(7), reason: 'wrong ring', replacement })
  expect(words(correction)).toMatch(/^An earlier entry corrected to: Repacked: .* One old ring: burnt\. Reason: wrong ring\.$/)
})

test('rings and section are said as far as they are known', () => {
  const begins = (given: { rings?: number | undefined; section?: undefined }) => words(aRepack({ ...at, ...given })).split(',')[0]
  expect(begins({ rings: undefined })).toBe('Repacked: section 8.5 mm')
  expect(begins({ rings: 1 })).toBe('Repacked: one ring of 8.5 mm')
  expect(begins({ section: undefined })).toBe('Repacked: 5 rings')
  expect(begins({ rings: undefined, section: undefined })).toBe('Repacked')
})
