import { expect, test } from 'vitest'
import { gapTyped, millimetresOf, turnsOf, turnsTyped } from './units-typed.ts'

test('sixteenths of an inch are kept as exact millimetres, and read back as they were typed', () => {
  expect([1, 3, 5, 16, 5.5].map((typed) => millimetresOf(typed, '1/16 in'))).toEqual([1.5875, 4.7625, 7.9375, 25.4, 8.73125])
  for (let typed = 0; typed <= 125; typed++) expect(gapTyped(millimetresOf(typed, '1/16 in'), '1/16 in')).toBe(typed)
})

test('millimetres stay as they were typed', () => {
  expect([0, 7.4, 12].map((typed) => millimetresOf(typed, 'mm'))).toEqual([0, 7.4, 12])
  expect([millimetresOf(null, '1/16 in'), gapTyped(null, '1/16 in')]).toEqual([null, null])
})

test('what is no figure stays none, and is refused later in words', () => {
  expect(millimetresOf(Number.NaN, '1/16 in')).toBeNaN()
  expect(turnsOf(Number.NaN, 'flats')).toBeNaN()
})

test('three flats and two quarters are half a turn, and six flats are one', () => {
  expect([turnsOf(3, 'flats'), turnsOf(2, 'quarter turns'), turnsOf(6, 'flats'), turnsOf(-1, 'quarter turns')]).toEqual([
    0.5, 0.5, 1, -0.25,
  ])
})

test('flats are read back as they were typed, all the way round and back', () => {
  for (let typed = -60; typed <= 60; typed++) expect(turnsTyped(turnsOf(typed, 'flats'), 'flats')).toBe(typed)
})
