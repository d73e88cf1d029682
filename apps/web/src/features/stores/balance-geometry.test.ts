import { expect, test } from 'vitest'
import { balanceDrawing, changesOf, levelsOf, monthsOf, numbersApart } from './balance-geometry.ts'

const frame = { left: 0, right: 100, top: 0, bottom: 50 }
const input = { today: '2026-03-01', until: '2026-06-09', onHand: 10, leastStock: 4, balances: [] }

test('stock is a stair: it stays until the day it changes, and to the end of the plan', () => {
  const balances = [
    { on: '2026-03-11', balance: 6 },
    { on: '2026-04-20', balance: 0 },
  ]
  const { path, start, zero, least } = balanceDrawing({ ...input, balances }, frame)
  expect(path).toBe('M0 0H10V20H50V50H100')
  expect(start).toEqual({ x: 0, y: 0 })
  expect(zero).toBe(50)
  expect(least).toBe(30)
})

test('below nought the zero line rises off the floor, and the change is marked as short', () => {
  const { zero, changes } = balanceDrawing({ ...input, balances: [{ on: '2026-03-11', balance: -10 }] }, frame)
  expect(zero).toBe(25)
  expect(changes).toEqual([{ x: 10, y: 50, isShort: true }])
})

test('zero is on it though the stock never comes near', () => {
  const { zero, least } = balanceDrawing({ ...input, balances: [{ on: '2026-03-11', balance: 8 }] }, frame)
  expect([zero, least]).toEqual([50, 30])
})

test('a store with nothing and no least stock is a line on the floor', () => {
  const { path, least } = balanceDrawing({ ...input, onHand: 0, leastStock: 0 }, frame)
  expect(path).toBe('M0 50H100')
  expect(least).toBeNull()
})

test('what is on hand today is no change, all else is', () => {
  const onHand = { on: '2026-03-01', balance: 10 }
  const order = { on: '2026-03-01', balance: 26 }
  expect(changesOf([onHand, order], input)).toEqual([order])
  expect(changesOf([order], input)).toEqual([order])
  expect(changesOf([{ ...onHand, on: '2026-03-02' }], input)).toHaveLength(1)
  expect(changesOf([], input)).toEqual([])
})

test('a change past the end of the plan is still on it, one of the past at its edge', () => {
  const balances = [
    { on: '2026-02-01', balance: 8 },
    { on: '2026-09-17', balance: 2 },
  ]
  const { changes } = balanceDrawing({ ...input, balances }, frame)
  expect(changes.map(({ x }) => x)).toEqual([0, 100])
})

test('months are named where there is room, the year beside January', () => {
  const { xOf } = balanceDrawing({ ...input, today: '2026-11-15', until: '2027-03-15' }, { ...frame, right: 600 })
  const months = monthsOf({ today: '2026-11-15', until: '2027-03-15' }, xOf, 600)
  expect(months.map(({ label }) => label)).toEqual(['Dec', 'Jan 2027', 'Feb', 'Mar'])
  const narrow = balanceDrawing({ ...input, today: '2026-11-15', until: '2027-03-15' }, { ...frame, right: 160 })
  expect(monthsOf({ today: '2026-11-15', until: '2027-03-15' }, narrow.xOf, 160).map(({ label }) => label)).toEqual([
    'Dec',
    'Feb',
  ])
})

test('levels are round figures with zero among them', () => {
  expect(levelsOf(0, 16)).toEqual([0, 5, 10, 15])
  expect(levelsOf(-3, 16)).toEqual([0, 5, 10, 15])
  expect(levelsOf(-12, 16)).toEqual([-10, 0, 10])
  expect(levelsOf(0, 0.9)).toEqual([0, 0.5])
})

test('of changes that lie on each other one has its number', () => {
  const changes = [
    { x: 0, y: 10 },
    { x: 5, y: 12 },
    { x: 5, y: 60 },
    { x: 40, y: 60 },
  ]
  expect([...numbersApart(changes)]).toEqual([0, 2, 3])
})
