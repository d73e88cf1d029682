import { aNip, aRepack, aValveId } from '@glandkeeper/fixtures/a-reading'
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
