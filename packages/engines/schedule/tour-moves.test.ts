import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { exchangeOuter, moveStretch, nodeBeside, reverseStretch, type Tour, tourOf } from './tour-moves.ts'

const numbered = (count: number) => tourOf(Array.from({ length: count }, (_, node) => node))

/** A tour is the same wherever it starts and whichever way it is walked. */
const cycleOf = ({ order }: Tour) => {
  const at = order.indexOf(0)
  const nodes = [...order.slice(at), ...order.slice(0, at)]
  return (nodes[1]! <= nodes.at(-1)! ? nodes : [0, ...nodes.slice(1).toReversed()]).join(' ')
}
const isWhole = ({ order, place }: Tour) => [...place].every((position, node) => order[position] === node)

describe('moves of a tour', () => {
  it.each([
    ['a short stretch', 2, 4, '0 1 4 3 2 5 6 7'],
    ['a long one, by turning the rest', 1, 6, '0 6 5 4 3 2 1 7'],
    ['one over the end', 7, 1, '0 7 2 3 4 5 6 1'],
  ])('turns round %s', (_, from, to, expected) => {
    const tour = numbered(8)
    reverseStretch(tour, from, to)
    expect([cycleOf(tour), isWhole(tour)]).toEqual([cycleOf(tourOf(expected.split(' ').map(Number))), true])
  })

  it.each([
    ['ahead', 1, 2, 4, false, '0 3 4 1 2 5 6 7'],
    ['ahead, turned', 1, 2, 4, true, '0 3 4 2 1 5 6 7'],
    ['back', 5, 3, 1, false, '0 1 5 6 7 2 3 4'],
    ['over the end', 7, 2, 2, false, '1 2 7 0 3 4 5 6'],
    ['where it was, turned', 3, 3, 2, true, '0 1 2 5 4 3 6 7'],
  ])('moves a stretch %s', (_, from, length, behind, isTurned, expected) => {
    const tour = numbered(8)
    moveStretch(tour, { from, length }, behind, isTurned)
    expect([cycleOf(tour), isWhole(tour)]).toEqual([cycleOf(tourOf(expected.split(' ').map(Number))), true])
  })

  it('exchanges the outer two of three stretches and names the ends of the new legs', () => {
    const tour = numbered(9)
    const ends = exchangeOuter(tour, 1, [2, 1, 3])
    expect([...tour.order].join(' ')).toBe('0 4 5 6 3 1 2 7 8')
    expect(ends).toEqual([0, 4, 6, 3, 3, 1, 2, 7])
    expect(isWhole(tour)).toBe(true)
  })

  it('keep every node once, at the place the tour says', () => {
    const position = fc.nat({ max: 10 })
    fc.assert(
      fc.property(position, position, fc.integer({ min: 1, max: 3 }), fc.boolean(), (from, other, length, isTurned) => {
        const tour = numbered(11)
        reverseStretch(tour, from, other)
        exchangeOuter(tour, other, [length, 2, 3])
        const isOutside = (other - from + 11) % 11 >= length
        if (isOutside) moveStretch(tour, { from, length }, other, isTurned)
        expect([...tour.order].toSorted((a, b) => a - b)).toEqual([...numbered(11).order])
        expect(isWhole(tour)).toBe(true)
        expect(nodeBeside(tour, nodeBeside(tour, 5, 3), -3)).toBe(5)
      }),
    )
  })
})
