import { listStock, type StockItem } from '@glandkeeper/contract/stores'
import { expect, test } from 'vitest'
import { reelChoices } from './reel-choices.ts'

const lot = (count: number, change: object = {}) => ({
  lotId: `01890000-0000-7000-8000-00000000000${count}`,
  label: `R-${count}`,
  batch: `B-${count}`,
  amount: 5.4,
  expiresOn: null,
  isExpired: false,
  ...change,
})

const item = (change: object): unknown => ({
  itemId: '01890000-0000-7000-8000-0000000000ff',
  kind: 'cord',
  name: 'Graphite 8.5',
  family: 'graphite braid',
  section: 8.5,
  boxBore: null,
  stemDiameter: null,
  thread: null,
  length: null,
  leadTimeDays: 21,
  leastStock: 8,
  packSize: 8,
  unit: 'm',
  revision: 1,
  onHand: 5.4,
  lots: [],
  onOrder: [],
  ...change,
})

const itemsOf = (...items: unknown[]): readonly StockItem[] => listStock.ok.parse({ items }).items
const wanted = { family: 'graphite braid', section: 8.5, boxBore: 45, stemDiameter: 28, ringLength: 114.7 }
const labelsOf = (choices: readonly { says: string }[]) => choices.map(({ says }) => says.split(' ')[0])

test('reels of the family and section stand first, all others after them, and studs are no packing', () => {
  const { fitting, others } = reelChoices(
    itemsOf(
      item({ section: 12, lots: [lot(1)] }),
      item({ section: 8.2, lots: [lot(2)] }),
      item({ family: 'PTFE braid', lots: [lot(3)] }),
      item({ kind: 'stud', unit: 'pc', lots: [lot(4)] }),
    ),
    wanted,
  )
  expect(labelsOf(fitting)).toEqual(['R-2'])
  expect(labelsOf(others)).toEqual(['R-1', 'R-3'])
})

test('where the family is not known the section alone decides; pressed rings go by bore and stem', () => {
  const ring = item({ kind: 'die-formed ring', unit: 'pc', section: null, boxBore: 45, stemDiameter: 28, lots: [lot(5)] })
  const { fitting } = reelChoices(itemsOf(item({ family: 'PTFE braid', lots: [lot(3)] }), ring), { ...wanted, family: 'unknown' })
  expect(labelsOf(fitting)).toEqual(['R-3', 'R-5'])
  expect(labelsOf(reelChoices(itemsOf(ring), { ...wanted, stemDiameter: 30 }).others)).toEqual(['R-5'])
})

test('what is used up or expired cannot be chosen', () => {
  const lots = [lot(1, { amount: 0 }), lot(2, { isExpired: true, expiresOn: '2026-01-01' }), lot(3)]
  expect(labelsOf(reelChoices(itemsOf(item({ lots })), wanted).fitting)).toEqual(['R-3'])
})

test('a choice says what is left, and brings batch and length of a ring', () => {
  const [choice] = reelChoices(itemsOf(item({ lots: [lot(1)] })), wanted).fitting
  expect(choice).toMatchObject({ says: 'R-1 · 5.4\u00a0m · Graphite 8.5', batch: 'B-1', unit: 'm', perRing: 0.1147 })
  expect(choice?.packing).toEqual({ family: 'graphite braid', section: 8.5 })
  const bare = { ...wanted, ringLength: null }
  expect(reelChoices(itemsOf(item({ lots: [lot(1)] })), bare).fitting[0]?.perRing).toBeNull()
})
