import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Moved, stockAsMoved } from './stock-as-moved.ts'

let made = 0
/** A movement of reel 1 on a day of May, told the same day. */
function aMovement(kind: string, day: number, amount: number, about: Partial<Moved> = {}): Moved {
  made += 1
  const at = new Date(Date.UTC(2026, 4, day))
  const lotId = kind === 'ordered' || kind === 'taken back' ? null : 'reel 1'
  return { id: `m${made}`, kind, lotId, amount, takenAt: at, receivedAt: at, corrects: null, expectedOn: null, ...about }
}

const leftOf = (movements: readonly Moved[]) => stockAsMoved(movements).lots.get('reel 1')

describe('what is left of a reel', () => {
  it('8 m received, 3 issued, 0.5 returned, 1.2 used at a valve: 4.3 m', () => {
    const movements = [
      aMovement('received', 1, 8),
      aMovement('issued', 2, 3),
      aMovement('returned', 3, 0.5),
      aMovement('used', 4, 1.2),
    ]
    expect(leftOf(movements)).toBe(4.3)
    expect([...stockAsMoved(movements).changes.values()]).toEqual([8, -3, 0.5, -1.2])
  })

  it('is what was counted, and after it what was taken from that: 8 - 3, counted 4, used 1: 3 m', () => {
    const movements = [
      aMovement('received', 1, 8),
      aMovement('issued', 2, 3),
      aMovement('counted', 3, 4),
      aMovement('used', 4, 1),
    ]
    expect(leftOf(movements)).toBe(3)
    expect([...stockAsMoved(movements).changes.values()]).toEqual([8, -3, -1, -1])
  })

  it('is not changed by what happened before the count and is told after it', () => {
    const told = { receivedAt: new Date(Date.UTC(2026, 4, 9)) }
    const before = [aMovement('received', 1, 8), aMovement('counted', 3, 4)]
    expect(leftOf([...before, aMovement('used', 2, 1, told)])).toBe(4)
    expect(leftOf([...before, aMovement('used', 4, 1, told)])).toBe(3)
  })

  it('at one time follows what was told first, and of what was told at once the id', () => {
    const told = { receivedAt: new Date(Date.UTC(2026, 4, 9)) }
    const received = aMovement('received', 1, 8)
    const counted = aMovement('counted', 3, 4, { id: 'b' })
    expect(leftOf([received, aMovement('used', 3, 1, { ...told, id: 'a' }), counted])).toBe(3)
    expect(leftOf([received, counted, aMovement('used', 3, 1, { id: 'a' })])).toBe(4)
    expect(leftOf([received, counted, aMovement('used', 3, 1, { id: 'c' })])).toBe(3)
  })

  it('goes below nought where more was used than anybody put down', () => {
    expect(leftOf([aMovement('received', 1, 1), aMovement('used', 2, 1.2)])).toBe(-0.2)
  })

  it('forgets what was taken back, a count too', () => {
    const issued = aMovement('issued', 2, 3)
    const counted = aMovement('counted', 3, 1)
    const back = (corrects: string) => aMovement('taken back', 5, 0, { corrects })
    const movements = [aMovement('received', 1, 8), issued, counted]
    expect(leftOf([...movements, back(counted.id)])).toBe(5)
    const both = stockAsMoved([...movements, back(counted.id), back(issued.id)])
    expect(both.lots.get('reel 1')).toBe(8)
    expect([...both.takenBack]).toEqual([counted.id, issued.id])
    expect(both.changes.get(issued.id)).toBe(0)
  })
})

describe('an order', () => {
  const order = aMovement('ordered', 1, 16, { expectedOn: '2026-06-01' })
  const later = aMovement('ordered', 2, 8, { expectedOn: '2026-05-20' })

  it('is awaited, the soonest first, and is no stock', () => {
    const { awaited, lots } = stockAsMoved([order, later])
    expect(awaited).toEqual([
      { orderId: later.id, amount: 8, expectedOn: '2026-05-20' },
      { orderId: order.id, amount: 16, expectedOn: '2026-06-01' },
    ])
    expect(lots.size).toBe(0)
  })

  it('is no more awaited once it came, and is again when its receipt is taken back', () => {
    const received = aMovement('received', 3, 15.5, { corrects: order.id })
    expect(stockAsMoved([order, received]).awaited).toEqual([])
    const back = aMovement('taken back', 4, 0, { corrects: received.id })
    expect(stockAsMoved([order, received, back]).awaited).toHaveLength(1)
  })

  it('that was taken back is not awaited', () => {
    expect(stockAsMoved([order, aMovement('taken back', 2, 0, { corrects: order.id })]).awaited).toEqual([])
  })
})

it('comes out the same in whatever order movements are told, and its changes add up to what is left', () => {
  const kinds = ['received', 'issued', 'returned', 'counted', 'used']
  const movement = fc
    .tuple(fc.constantFrom(...kinds), fc.integer({ min: 1, max: 28 }), fc.integer({ min: 0, max: 900 }))
    .map(([kind, day, centimetres]) => aMovement(kind, day, centimetres / 100))
  const some = fc
    .array(movement, { maxLength: 12 })
    .chain((movements) =>
      fc
        .tuple(
          fc.shuffledSubarray(movements, { minLength: movements.length }),
          fc.subarray(movements.map(({ id }) => aMovement('taken back', 28, 0, { corrects: id }))),
        )
        .map(([shuffled, back]) => ({ movements, shuffled, back })),
    )
  fc.assert(
    fc.property(some, ({ movements, shuffled, back }) => {
      const told = stockAsMoved([...movements, ...back])
      expect(stockAsMoved([...back, ...shuffled]).lots).toEqual(told.lots)
      const sum = [...told.changes.values()].reduce((total, change) => total + change, 0)
      expect(sum).toBeCloseTo(told.lots.get('reel 1') ?? 0, 6)
    }),
  )
})
