import { expect, test } from 'vitest'
import { windowOf, windowsFor } from './board-windows.ts'

test('rows inside one window fetch that window', () => {
  expect(windowsFor(0, 40, 100_000)).toEqual([0])
  expect(windowsFor(100, 199, 100_000)).toEqual([100])
})

test('rows across a border fetch both windows', () => {
  expect(windowsFor(95, 135, 100_000)).toEqual([0, 100])
  expect(windowsFor(199, 200, 100_000)).toEqual([100, 200])
})

test('a jump far down fetches only what is looked at', () => {
  expect(windowsFor(50_020, 50_060, 100_000)).toEqual([50_000])
})

test('nothing is fetched past the end', () => {
  expect(windowsFor(80, 130, 95)).toEqual([0])
  expect(windowsFor(180, 220, 200)).toEqual([100])
  expect(windowsFor(0, 30, 0)).toEqual([])
})

test('a row belongs to the window that begins at or before it', () => {
  expect([windowOf(0), windowOf(99), windowOf(100), windowOf(99_999)]).toEqual([0, 0, 100, 99_900])
})
