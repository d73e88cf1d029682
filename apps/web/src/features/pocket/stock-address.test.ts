import { listStock } from '@glandkeeper/contract/stores'
import { expect, test } from 'vitest'
import { STOCK_ADDRESS } from './sync.ts'

test('a device keeps the stock from where the contract has it', () => {
  expect(STOCK_ADDRESS).toBe(listStock.path)
})
