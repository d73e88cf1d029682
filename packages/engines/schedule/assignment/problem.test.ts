import { describe, expect, it } from 'vitest'
import { AssignmentBuilder } from './problem.ts'

const faultOf = (make: (builder: AssignmentBuilder) => void, capacities: readonly number[] = [3]) => {
  const builder = new AssignmentBuilder(capacities)
  make(builder)
  const built = builder.build()
  return built.ok ? 'built' : `${built.problem.code} ${built.problem.field}`
}

describe('a problem of assignment', () => {
  it('stands in rows, uses of the same resource added up and uses of nothing left out', () => {
    const builder = new AssignmentBuilder([3, 5])
    builder.item('A')
    builder.choice(7)
    builder.choice(2)
    builder.use(1, 1)
    builder.use(0, 0)
    builder.use(1, 2)
    builder.item('B')
    builder.choice(4)
    builder.use(1, 5)
    const built = builder.build()
    expect(built).toEqual({
      ok: true,
      problem: {
        names: ['A', 'B'],
        firstChoice: Int32Array.of(0, 2, 3),
        cost: Float64Array.of(7, 2, 4),
        firstUse: Int32Array.of(0, 0, 1, 2),
        resource: Int32Array.of(1, 1),
        amount: Float64Array.of(3, 5),
        capacities: Float64Array.of(3, 5),
      },
    })
  })

  it.each([
    ['a cost that is none', (builder: AssignmentBuilder) => [builder.item('A'), builder.choice(NaN)], 'A'],
    ['a cost without end', (builder: AssignmentBuilder) => [builder.item('A'), builder.choice(Infinity)], 'A'],
    ['an amount below 0', (builder: AssignmentBuilder) => [builder.item('A'), builder.choice(1), builder.use(0, -1)], 'A'],
    ['a resource there is not', (builder: AssignmentBuilder) => [builder.item('A'), builder.choice(1), builder.use(1, 1)], 'A'],
    ['an item without a choice', (builder: AssignmentBuilder) => [builder.item('A'), builder.item('B'), builder.choice(1)], 'A'],
    ['a choice of no item', (builder: AssignmentBuilder) => [builder.choice(1)], 'choice'],
    ['a use of no choice', (builder: AssignmentBuilder) => [builder.item('A'), builder.use(0, 1)], 'A'],
  ])('is refused by name for %s', (_, make, field) => {
    expect(faultOf((builder) => void make(builder))).toBe(`assignment/input ${field}`)
  })

  it('is refused for a capacity that is none', () => {
    expect(faultOf(() => undefined, [3, NaN])).toBe('assignment/input capacities')
  })
})
