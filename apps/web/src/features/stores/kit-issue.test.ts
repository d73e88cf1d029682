import { listStock, moveStock, type StockItem } from '@glandkeeper/contract/stores'
import { Kit } from '@glandkeeper/contract/kits'
import { expect, test } from 'vitest'
import { issuedMovements, lotsToIssue, stillToGo } from './kit-issue.ts'

const idOf = (count: number) => `01890000-0000-7000-8000-${String(count).padStart(12, '0')}`
const CORD = idOf(1)
const STUDS = idOf(2)
const OUTAGE = idOf(9)

const reel = (count: number, change: object = {}) => ({
  lotId: idOf(100 + count),
  label: `R-${count}`,
  batch: 'B-7',
  length: 2000,
  pieces: [
    { tag: 'BM-1', length: 688, count: 1, says: '' },
    { tag: 'BM-2', length: 500, count: 2, says: '' },
  ],
  left: 302,
  isScrap: false,
  ...change,
})

const lineOf = (change: object = {}) => ({
  itemId: CORD,
  name: 'Graphite 8',
  kind: 'cord',
  unit: 'm',
  needed: 1.7,
  onHand: 8,
  issued: 0,
  tags: ['BM-1', 'BM-2'],
  reels: [reel(1)],
  short: [],
  waste: null,
  ...change,
})

const kitOf = (...lines: object[]): Kit => Kit.parse({ title: 'summer stop', valves: 2, lines, open: [] })

const none = { family: null, section: null, boxBore: null, stemDiameter: null, thread: null, length: null }
const onBooks = (lotId: string, amount: number) => ({
  lotId,
  label: 'R',
  batch: 'B-7',
  amount,
  expiresOn: null,
  isExpired: false,
})

/** As the books have it: two reels of 2 m. */
const stock: readonly StockItem[] = listStock.ok.parse({
  items: [
    {
      ...none,
      itemId: CORD,
      kind: 'cord',
      name: 'Graphite 8',
      family: 'graphite braid',
      section: 8,
      leadTimeDays: 5,
      leastStock: 8,
      packSize: 8,
      unit: 'm',
      revision: 1,
      onHand: 4,
      lots: [onBooks(idOf(101), 2), onBooks(idOf(102), 2)],
      onOrder: [],
    },
    {
      ...none,
      itemId: STUDS,
      kind: 'stud',
      name: 'M12 studs',
      thread: 'M12',
      length: 85,
      leadTimeDays: 5,
      leastStock: 8,
      packSize: 10,
      unit: 'pc',
      revision: 1,
      onHand: 7,
      lots: [
        { lotId: idOf(201), label: 'later', batch: 'B', amount: 5, expiresOn: null, isExpired: false },
        { lotId: idOf(202), label: 'sooner', batch: 'B', amount: 2, expiresOn: '2027-01-01', isExpired: false },
        { lotId: idOf(203), label: 'expired', batch: 'B', amount: 9, expiresOn: '2025-01-01', isExpired: true },
      ],
      onOrder: [],
    },
  ],
}).items
const studLine = lineOf({ itemId: STUDS, name: 'M12 studs', kind: 'stud', unit: 'pc', needed: 6, issued: 1, reels: [] })

test('of a reel what is cut off goes out for the outage, and an end of scrap with it', () => {
  const [goesBack, scrap] = lotsToIssue(kitOf(lineOf({ reels: [reel(1), reel(2, { isScrap: true })] })), stock, {
    outageId: OUTAGE,
  })
  expect(goesBack).toMatchObject({ label: 'R-1', amount: 1.698, outageId: OUTAGE, tag: null })
  expect(scrap).toMatchObject({ label: 'R-2', amount: 2, outageId: OUTAGE, tag: null })
})

test('the kit of a valve goes out for the valve', () => {
  expect(lotsToIssue(kitOf(lineOf()), stock, { tag: 'BM-1' })[0]).toMatchObject({ tag: 'BM-1', outageId: null })
})

test('for a round each valve has its own, and together they are what leaves the reel', () => {
  const lots = lotsToIssue(kitOf(lineOf({ reels: [reel(1, { isScrap: true })] })), stock, { roundId: idOf(8) })
  expect(lots.map(({ tag, amount }) => [tag, amount])).toEqual([
    ['BM-1', 0.688],
    ['BM-2', 1.312],
  ])
})

test('boxes are emptied in the order they expire, for what is still to go out and no more', () => {
  expect(lotsToIssue(kitOf(studLine), stock, { tag: 'BM-1' }).map(({ label, amount }) => [label, amount])).toEqual([
    ['sooner', 2],
    ['later', 3],
  ])
})

test('a reel that was handed out before is cut first and does not go out again', () => {
  // 1.2 m of R-1 were issued: the books have 2 m of it still, and of R-3 nothing.
  const reels = [reel(1, { length: 1200, left: 12, isScrap: true }), reel(3), reel(1)]
  const lots = lotsToIssue(kitOf(lineOf({ needed: 4, issued: 3.2, reels })), stock, { outageId: OUTAGE })
  expect(lots.map(({ label, amount }) => [label, amount])).toEqual([['R-1', 1.698]])
})

test('a reel of which just half was handed out is told from the half in the store', () => {
  const half = { length: 2000, left: 302 }
  const lots = lotsToIssue(kitOf(lineOf({ reels: [reel(1, half), reel(1, half)] })), stock, { outageId: OUTAGE })
  expect(lots.map(({ amount }) => amount)).toEqual([1.698])
})

test('cord that no reel is long enough for is not taken in pieces', () => {
  expect(lotsToIssue(kitOf(lineOf({ reels: [] })), stock, { tag: 'BM-1' })).toEqual([])
})

test('what is issued, or what the store has no item for, does not go out', () => {
  expect(
    lotsToIssue(kitOf(lineOf({ reels: [reel(1, { length: 1698, left: 0 })] }), lineOf({ itemId: null })), stock, { tag: 'BM-1' }),
  ).toEqual([])
})

test('what has not gone out is what is cut in the store, or the rest of the pieces', () => {
  const open = (line: object) => kitOf(line).lines.map((each) => stillToGo(each, stock))[0]
  expect(open(lineOf())).toBe(1.698)
  expect(open(lineOf({ reels: [reel(3)] }))).toBe(0)
  expect(open(studLine)).toBe(5)
})

test('a piece is never issued shorter than it is cut', () => {
  const cut = { length: 2000, pieces: [{ tag: 'BM-1', length: 1304.2, count: 1, says: '' }], left: 695.8 }
  expect(lotsToIssue(kitOf(lineOf({ reels: [reel(1, cut)] })), stock, { tag: 'BM-1' })[0]?.amount).toBe(1.305)
})

test('each movement has an id of its own and is one the contract takes', () => {
  let made = 500
  const stamp = { takenAt: '2026-05-04T10:00:00Z', newId: () => idOf(made++), note: 'summer stop' }
  const movements = issuedMovements(lotsToIssue(kitOf(lineOf(), studLine), stock, { outageId: OUTAGE }), stamp)
  expect(movements).toHaveLength(3)
  expect(new Set(movements.map(({ movementId }) => movementId)).size).toBe(3)
  expect(moveStock.body.safeParse({ movements }).error).toBeUndefined()
})
