import { expect, test } from 'vitest'
import { figureAsTyped, figureOf, stepped } from './figure.ts'

test('a comma is a point, so that 3,5 is never read as 35', () => {
  expect([figureOf('3,5'), figureOf('3.5'), figureOf(' .5 '), figureOf('-0,25'), figureOf('−1')]).toEqual([
    3.5, 3.5, 0.5, -0.25, -1,
  ])
})

test('nothing typed is not said, and what is no figure is not taken for one', () => {
  expect(figureOf('  ')).toBeNull()
  for (const text of ['abc', '3.5.1', '1e3', '3 5', '-', '0x10', 'Infinity']) expect(figureOf(text)).toBeNaN()
})

test('ten steps of a tenth are one, and no step goes below the least', () => {
  let gap: number | null = 6
  for (let press = 0; press < 10; press++) gap = stepped(gap, 0.1, 0)
  expect(gap).toBe(7)
  expect(stepped(0, -0.1, 0)).toBe(0)
  expect(stepped(null, 0.1, 0)).toBe(0.1)
})

test('a gap is shown with its one decimal, turns and counts as they are', () => {
  expect([
    figureAsTyped(6.525, 1),
    figureAsTyped(5, 1),
    figureAsTyped(0.5, 2),
    figureAsTyped(5, 0),
    figureAsTyped(null, 1),
  ]).toEqual(['6.5', '5.0', '0.5', '5', ''])
})
