import { expect, test } from 'vitest'
import { addressWith, isFiltered, viewOf } from './board-view.ts'

const view = (address: string) => viewOf(new URLSearchParams(address))

test('an address without a view is every valve, what runs out first on top', () => {
  expect(view('')).toEqual({ order: 'runs out first' })
})

test('words that are no standing and no order are left out', () => {
  expect(view('standing=red&order=alphabetical')).toEqual({ order: 'runs out first' })
})

test('changing one filter keeps the others', () => {
  expect(view(addressWith(view('standing=book&area=BH&order=tag'), { area: 'SM' }))).toEqual({
    standing: 'book',
    area: 'SM',
    order: 'tag',
  })
})

test('null takes a filter away', () => {
  expect(view(addressWith(view('standing=book&find=BH-1'), { standing: null }))).toEqual({
    find: 'BH-1',
    order: 'runs out first',
  })
})

test('an order alone filters nothing', () => {
  expect(isFiltered(view('order=tag'))).toBe(false)
  expect(isFiltered(view('service=steam'))).toBe(true)
})
