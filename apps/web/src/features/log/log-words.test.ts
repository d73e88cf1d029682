import { ChangeSubject } from '@glandkeeper/contract/log'
import { expect, test } from 'vitest'
import { fieldInWords, foldChanges, foldedInWords, pageInWords, pageOf } from './log-words.ts'

const changes = (count: number, before: string) =>
  Array.from({ length: count }, (_, index) => ({ field: `field${index}`, before, after: 'new' }))

test('a field inside another is named after it', () => {
  expect(fieldInWords('gland.boxBore')).toBe('gland, box bore')
  expect(fieldInWords('walkPosition')).toBe('walk position')
})

test('a few changed fields show at once, the fifth of five too, and of more the first four', () => {
  const folds = (count: number) => {
    const { shown, folded } = foldChanges(changes(count, 'old'))
    return [shown.length, folded.length]
  }
  expect([folds(0), folds(1), folds(5), folds(6)]).toEqual([
    [0, 0],
    [1, 0],
    [5, 0],
    [4, 2],
  ])
})

test('of something new the fields are counted, and a single field filled in is shown', () => {
  expect(foldChanges(changes(3, '')).shown).toEqual([])
  expect(foldChanges(changes(3, '')).folded).toHaveLength(3)
  expect(foldChanges(changes(1, '')).shown).toHaveLength(1)
  expect(foldedInWords(3, true)).toBe('3 fields entered')
  expect(foldedInWords(1, false)).toBe('1 more field changed')
})

test('a page says where it lies among all changes', () => {
  expect(pageInWords({ skip: 0, shown: 50, total: 1234 })).toBe('1 to 50 of 1,234 changes')
  expect(pageInWords({ skip: 1200, shown: 34, total: 1234 })).toBe('1,201 to 1,234 of 1,234 changes')
  expect(pageInWords({ skip: 0, shown: 1, total: 1 })).toBe('1 change')
  expect(pageInWords({ skip: 5000, shown: 0, total: 1234 })).toBe('none of 1,234 changes')
})

test('what has a page is a way to it, and nothing without a name is', () => {
  expect(pageOf({ subject: 'valve', name: 'BM 33/07' })).toBe('/valves/BM%2033%2F07')
  expect(pageOf({ subject: 'area', name: 'BH' })).toBe('/?area=BH')
  expect(pageOf({ subject: 'person', name: 'R. Oakes' })).toBeNull()
  expect(ChangeSubject.options.map((subject) => pageOf({ subject, name: '' }))).toEqual(ChangeSubject.options.map(() => null))
})
